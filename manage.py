#!/usr/bin/env python3
"""Loftbook's command line; ``manage.py help`` lists the commands."""

import os
import sys

from django.core.management import execute_from_command_line


def main() -> None:
    """Run one command with the project's settings."""
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "config.settings")
    execute_from_command_line(sys.argv)


if __name__ == "__main__":
    main()
