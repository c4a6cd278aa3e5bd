from __future__ import annotations

import os
import sys
from typing import Any

from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandParser

from club.home.demonstration import CLUB, PASSWORD, load_demonstration

DEFAULT_ADDRESS = "127.0.0.1:8000"


class Command(BaseCommand):
    help = (
        "Serves the demonstration club: makes it on the first start, keeps what was typed on every later one."
    )

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("address", nargs="?", default=DEFAULT_ADDRESS, help="host:port, as 0.0.0.0:8000")
        parser.add_argument("--only-load", action="store_true", help="make the club, but don't serve it")

    def handle(self, *args: Any, **options: Any) -> None:
        call_command("migrate", verbosity=0)
        if load_demonstration():
            self.stdout.write("The demonstration club is made.")
        self.stdout.write(
            f"Open http://{options['address']}/ and sign in as ilse (coordinator), pavo (instructor),"
        )
        self.stdout.write(f"maren (helper) or tobias (safety officer). The password of each: {PASSWORD}")
        self.stdout.write("Stop with Ctrl+C. What was typed is kept for the next start.")
        self.stdout.flush()
        if not options["only_load"]:
            serve(options["address"])


def serve(address: str) -> None:
    """Become the web server, so that Ctrl+C and a supervisor's signals reach it."""
    os.environ.setdefault("HANDWHEEL_CLUB", CLUB)
    server = [
        sys.executable,
        "-m",
        "gunicorn",
        "club.wsgi",
        "--bind",
        address,
        "--workers",
        "2",
        "--log-level",
        "warning",
    ]
    os.execv(sys.executable, server)
