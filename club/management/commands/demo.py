from __future__ import annotations

import os
import socket
import sys
from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandParser

from club.home.demonstration import CLUB, PASSWORD, load_demonstration

# What the demonstration club would set, where nobody set anything else.
SETTINGS = {"HANDWHEEL_CLUB": CLUB, "HANDWHEEL_CURRENCY": "GBP", "HANDWHEEL_TIME_ZONE": "Europe/London"}
DEFAULT_ADDRESS = "127.0.0.1:8000"
# What a server is told so that it listens to the whole network; nobody can open these.
EVERYWHERE = frozenset({"", "0.0.0.0", "[::]"})


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
        port = options["address"].rpartition(":")[2]
        host = hosts_at(options["address"])[0]
        self.stdout.write(f"Open http://{host}:{port}/ and sign in as ilse (coordinator), pavo (instructor),")
        self.stdout.write("maren (helper), tobias (safety officer) or renske (treasurer).")
        self.stdout.write(f"The password of each: {PASSWORD}")
        self.stdout.write("Stop with Ctrl+C. What was typed is kept for the next start.")
        self.stdout.flush()
        if not options["only_load"]:
            serve(options["address"])


def serve(address: str) -> None:
    """Become the web server, so that Ctrl+C and a supervisor's signals reach it."""
    for setting, value in SETTINGS.items():
        os.environ.setdefault(setting, value)
    os.environ["HANDWHEEL_HOSTS"] = ",".join([*settings.ALLOWED_HOSTS, *hosts_at(address)])
    server = [
        sys.executable,
        "-m",
        "gunicorn",
        "club.wsgi",
        "--bind",
        address,
        "--workers",
        "2",
        # A set of handouts for a full class takes a slow machine more than the usual half minute.
        "--timeout",
        "180",
        "--log-level",
        "warning",
    ]
    os.execv(sys.executable, server)


def hosts_at(address: str) -> list[str]:
    """What people write in front of the port to reach a server that listens at this address, best first."""
    host = address.rpartition(":")[0]
    if host not in EVERYWHERE:
        return [host]
    name = socket.gethostname()
    return [*_own_address(), name, f"{name}.local"]


def _own_address() -> list[str]:
    """This machine's address in its network, or nothing where there is none."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            # A datagram socket sends nothing by connecting; the address is one for documents (RFC 5737).
            probe.connect(("192.0.2.1", 9))
        except OSError:
            return []
        return [probe.getsockname()[0]]
