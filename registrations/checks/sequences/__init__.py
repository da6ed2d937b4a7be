"""One rule of the changes a module; the list of them is ``sequence.SEQUENCE_RULES``."""
