#!/usr/bin/env python3
"""The one way in: `demo` and `test` set everything up, every other word is a command of the house.

Kept readable by Python 3.6, so that an old Python gets a sentence in place of a traceback.
"""

import os
import sys


def main():
    # type: () -> None
    if sys.version_info < (3, 11):
        sys.exit("Handwheel needs Python 3.11 or newer; this one is {}.{}.".format(*sys.version_info[:2]))
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "club.settings")
    from club.start.launch import launch

    launch(sys.argv[1:])


if __name__ == "__main__":
    main()
