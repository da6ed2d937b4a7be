"""Checks: what a good teacher would say about a combination."""

from collections.abc import Iterable, Iterator
from typing import Protocol

from registrations.checks.explained import Explained
from registrations.checks.findings import Finding, Level
from registrations.checks.rules import (
    above_pipe_limit,
    accompaniment_carries_solo,
    bass_takes_solo_colour,
    break_leaves_gap,
    celeste_in_chorus,
    celeste_without_partner,
    coupled_both_ways,
    coupler_adds_nothing,
    coupler_to_idle_keyboard,
    double_without_unison,
    duplicate_pipes,
    gap_below_mutation,
    harsh_in_minor,
    missing_keyboard,
    mixture_without_chorus,
    mutation_alone,
    no_unison,
    octave_gap,
    octave_runs_out,
    only_accessories,
    pedal_out_of_balance,
    pedal_silent,
    pedal_without_16,
    pedal_without_definition,
    short_stop_bares_keys,
    silent_coupler,
    silent_keyboard,
    solo_carries_accompaniment,
    solo_under_accompaniment,
    sub_octave_thickens,
    tempered_third_beats,
    thick_in_the_bass,
    tierce_in_full_chords,
    tremulant_on_chorus,
    tremulant_shakes_both,
    tremulant_without_sound,
    unison_off_silence,
)
from registrations.checks.scene import Scene


class Rule(Explained, Protocol):
    """A rule's module that looks at one combination."""

    def check(self, scene: Scene) -> Iterator[Finding]: ...  # noqa: D102


#: In the order in which a reader meets them.
RULES: tuple[Rule, ...] = (
    only_accessories,
    tremulant_without_sound,
    missing_keyboard,
    silent_keyboard,
    pedal_silent,
    unison_off_silence,
    silent_coupler,
    coupler_adds_nothing,
    coupler_to_idle_keyboard,
    octave_runs_out,
    sub_octave_thickens,
    mutation_alone,
    no_unison,
    octave_gap,
    double_without_unison,
    gap_below_mutation,
    duplicate_pipes,
    mixture_without_chorus,
    break_leaves_gap,
    above_pipe_limit,
    tierce_in_full_chords,
    celeste_in_chorus,
    celeste_without_partner,
    tremulant_on_chorus,
    tremulant_shakes_both,
    accompaniment_carries_solo,
    solo_carries_accompaniment,
    bass_takes_solo_colour,
    solo_under_accompaniment,
    coupled_both_ways,
    short_stop_bares_keys,
    thick_in_the_bass,
    pedal_without_16,
    pedal_without_definition,
    pedal_out_of_balance,
    tempered_third_beats,
    harsh_in_minor,
)


def run(scene: Scene) -> tuple[Finding, ...]:
    """Give all findings: faults first, then warnings, then advice, each in the rules' order."""
    return in_order(finding for rule in RULES for finding in rule.check(scene))


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Put faults first, then warnings, then advice, and leave the order within each."""
    return tuple(sorted(findings, key=lambda one: list(Level).index(one.level)))
