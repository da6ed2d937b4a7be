from instruments.pitch import ROUNDED_LABELS, parse_length
from tests.reference.tables import replay


@replay("stop written meant", "jehmlich_freiberg.txt")
def test_a_label_of_silbermann_means_the_true_length(stop, written, meant):
    assert ROUNDED_LABELS[parse_length(written)] == parse_length(meant)


@replay("stop written meant", "miller_1913_labels.txt")
def test_a_label_that_miller_prints_means_the_true_length(stop, written, meant):
    assert ROUNDED_LABELS[parse_length(written)] == parse_length(meant)


@replay("stop written meant", "mersenne_1636.txt")
def test_about_so_many_feet_in_mersenne_means_the_true_length(stop, written, meant):
    assert ROUNDED_LABELS[parse_length(written)] == parse_length(meant)
