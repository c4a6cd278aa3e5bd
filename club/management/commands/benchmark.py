"""How long the slow works of the house take on this machine, and how much memory: to compare by."""

from __future__ import annotations

import resource
from collections.abc import Callable
from datetime import date
from statistics import median
from time import perf_counter
from typing import Any

from django.core.management.base import BaseCommand, CommandParser

from club.base.printing import Paper, render_pdf
from club.base.quantities.length import LengthStyle
from club.classes.models import ClassSession, SignUp
from club.classes.register import Listed
from club.classes.seats import Seat
from club.home.class_handouts import paper_of
from club.home.demonstration import FOLDER
from club.home.project_page import handout_of
from club.people.models import Person
from projects.library.domain.facts import facts
from projects.library.domain.library_form import from_file, to_json
from projects.library.drawing import drawn_piece, life_size
from projects.library.models import Edition, Project
from projects.library.tables import woods

TYPED = LengthStyle.AS_TYPED
KIB_PER_MIB = 1024


class Command(BaseCommand):
    help = "Time reading, drawing and printing of the demonstration's projects; needs no database."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--times", type=int, default=5, help="how often each work is done")
        parser.add_argument(
            "--students", type=int, nargs="*", default=[12, 24], help="handouts of such classes"
        )

    def handle(self, *args: Any, **options: Any) -> None:
        data = (FOLDER / "library.json").read_bytes()
        library = from_file(data)
        editions = [_edition(number, each.recipe) for number, each in enumerate(library.editions, 1)]
        works: dict[str, Callable[[], object]] = {
            "read a library": lambda: from_file(data),
            "write it": lambda: to_json(library),
            "facts of each piece": lambda: [facts(each.recipe, woods()) for each in editions],
            "each drawing, wide and narrow": lambda: [drawn_piece(each.recipe, TYPED) for each in editions],
            "each life-size drawing": lambda: [life_size(each.recipe, TYPED, Paper.A4) for each in editions],
            "one handout as PDF": lambda: _handout(editions[0]),
        }
        for name, work in works.items():
            self.stdout.write(f"{name:32}{_milliseconds(work, options['times']):10.1f} ms")
        self._peak("most memory so far")
        for students in options["students"]:
            name = f"handouts of {students} students, once"
            start = perf_counter()
            _class_handouts(editions[0], students)
            self.stdout.write(f"{name:32}{(perf_counter() - start) * 1000:10.1f} ms")
            self._peak("most memory by then")

    def _peak(self, name: str) -> None:
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / KIB_PER_MIB
        self.stdout.write(f"{name:32}{peak:10.1f} MiB")


def _edition(number: int, recipe: Any) -> Edition:
    edition = Edition(project=Project(key=recipe.key), number=number)
    edition.take(recipe)
    return edition


def _handout(edition: Edition) -> bytes:
    return render_pdf("print/handout.html", handout_of(edition, TYPED, Paper.A4), paper=Paper.A4)


def _class_handouts(edition: Edition, students: int) -> bytes:
    """As the page of a class prints them; rows that are kept nowhere."""
    session = ClassSession(edition=edition, day=date(2027, 4, 8), note="Respirators from the first cut.")
    listed = [_listed(number) for number in range(1, students + 1)]
    context = paper_of(session, listed, TYPED, Paper.A4)
    return render_pdf("print/class_handouts.html", context, paper=Paper.A4)


def _listed(number: int) -> Listed:
    name = f"Student {number}"
    row = SignUp(number=number, kit=number, person=Person(name=name))
    return Listed(Seat(None, None, row), row, f"{number}a", f"lathe {number}", "first sitting, 19:00")


def _milliseconds(work: Callable[[], object], times: int) -> float:
    """The median of so many runs, after one that warms up."""
    work()
    taken = []
    for _run in range(times):
        start = perf_counter()
        work()
        taken.append(perf_counter() - start)
    return median(taken) * 1000
