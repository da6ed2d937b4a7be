import re
from dataclasses import replace
from fractions import Fraction

from instruments.breakchart import break_chart, chart_svg
from instruments.compass import parse_compass
from instruments.zones import parse_zones
from tests.builders import a_stop, an_organ

FOURNITURE = "C 19.22.26\nc1 12.15.19"


def chart_of(zones: str = "", **given):
    made = a_stop("Mixture", id="mixture", composition=parse_zones(zones), ranks=3)
    organ = an_organ(great=[replace(made, **given)])
    (division, stop), *_ = organ.stops()
    return break_chart(organ, division, stop)


def slopes(svg: str, kind: str) -> list[tuple[float, ...]]:
    pattern = rf'class="{kind}" x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"'
    return [tuple(map(float, one)) for one in re.findall(pattern, svg)]


def test_a_plain_stop_has_no_chart():
    assert chart_of(ranks=1, length=Fraction(8)) is None


def test_each_zone_says_its_keys_counts_and_feet():
    spans = chart_of(FOURNITURE).spans

    assert [one.keys for one in spans] == ["C to b", "c1 to c4"]
    assert [one.counts for one in spans] == ["19.22.26", "12.15.19"]
    assert spans[0].feet == "1⅓′, 1′, ⅔′"


def test_a_written_composition_is_not_assumed():
    assert not chart_of(FOURNITURE).assumed


def test_a_composition_nobody_wrote_down_is_the_usual_one_and_says_so():
    chart = chart_of()

    assert chart.assumed
    assert chart.spans[0].counts == "15.19.22"


def test_a_zone_that_lies_outside_the_compass_is_not_shown():
    chart = chart_of(FOURNITURE, compass=parse_compass("C-B"))

    assert [one.keys for one in chart.spans] == ["C to B"]


def test_a_zone_of_one_key_names_that_key():
    assert chart_of("C 15\nC# 19", compass=parse_compass("C-f")).spans[0].keys == "C"


def test_the_words_say_what_the_picture_shows():
    assert chart_of(FOURNITURE).words == "C to b: 1⅓′, 1′, ⅔′; c1 to c4: 2⅔′, 2′, 1⅓′."


def test_octaves_are_full_lines_and_fifths_hollow_ones():
    svg = chart_svg(chart_of(FOURNITURE))

    assert len(slopes(svg, "rank")) == 2
    assert len(slopes(svg, "rank off")) == len(slopes(svg, "rank core")) == 4


def test_a_line_rises_with_the_keys_and_begins_lower_after_a_break():
    twenty_second, fifteenth = slopes(chart_svg(chart_of(FOURNITURE)), "rank")

    assert twenty_second[3] < twenty_second[1]
    assert fifteenth[0] == twenty_second[2]
    assert fifteenth[1] > twenty_second[3]


def test_a_rank_that_goes_on_past_a_break_is_one_straight_line():
    below, above = slopes(chart_svg(chart_of("C 15\nc 15", compass=parse_compass("C-b"))), "rank")

    assert below[2:] == above[:2]
    assert round(below[1] - below[3], 1) == round(above[1] - above[3], 1)


def test_each_break_is_named_and_ranks_of_one_length_are_counted():
    svg = chart_svg(chart_of("C 22.22\nf#1 15.15"))

    assert "breaks at f♯1" in svg
    assert "2×1′" in svg


def test_a_chart_needs_no_style_of_its_own():
    svg = chart_svg(chart_of(FOURNITURE))

    assert "style=" not in svg
    assert svg.startswith('<svg class="breaks" role="img"')
