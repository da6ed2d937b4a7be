"""One rule a module; the list of them is ``registrations.checks.RULES``."""
