"""What is to be done before a class, with its dates: the recipe's jobs, and what the list calls for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from django.urls import reverse

from club.classes import preparing_sentences as words
from club.classes.domain.errors import ClassError
from club.classes.domain.local_time import local
from club.classes.domain.preparation import (
    Job,
    Preparation,
    jobs_of,
    needs_material,
    preparation,
    with_order,
)
from club.classes.domain.queue import Book
from club.classes.models import ClassSession, PreparationDone
from club.classes.ordering import Ordering
from club.classes.preparing_sentences import Link
from projects.kit.counting import Heads, kits_for
from projects.library.domain.preparation import GlueUp, Task
from projects.library.domain.recipe import Recipe

ORDER, PRINT, SEAT, OFFER = "order", "print", "seat", "offer"
PRINTED_BEFORE = timedelta(days=1)


@dataclass(frozen=True)
class Todo:
    """One job with its date by the workshop's clock. What isn't `ticked` goes away when it is settled."""

    key: str
    title: str
    start_by: datetime
    minutes: int = 0
    takes: str = ""
    tells: str = ""
    link: Link | None = None
    ticked: bool = True
    in_chain: bool = False
    late: str = ""
    done: PreparationDone | None = None


@dataclass(frozen=True)
class Preparing:
    """Everything to do, the first to begin first; `now` is by the workshop's clock."""

    now: datetime
    todos: tuple[Todo, ...] = ()
    mind: str = ""

    @property
    def left(self) -> tuple[Todo, ...]:
        return tuple(todo for todo in self.todos if not todo.done)

    @property
    def late(self) -> tuple[Todo, ...]:
        return tuple(todo for todo in self.left if todo.late)

    @property
    def minutes_left(self) -> int:
        """Hands-on."""
        return sum(todo.minutes for todo in self.left)

    @property
    def minutes_left_words(self) -> str:
        return words.minutes_words(self.minutes_left)

    @property
    def chain(self) -> tuple[str, ...]:
        """Titles of what is left of the longest chain."""
        return tuple(todo.title for todo in self.left if todo.in_chain)


def preparing(session: ClassSession, book: Book, ordering: Ordering, now: datetime) -> Preparing:
    """What is to do up to the class; nothing once it has begun, or where it isn't held."""
    here = local(now, ZoneInfo(session.workshop.zone))
    if session.is_cancelled or now >= session.begins:
        return Preparing(here)
    plan, mind = _plan(session, ordering)
    done = {row.key: row for row in session.done.all()}
    todos = (*_dated(session, plan, ordering, here), *_own(session, book, here))
    in_order = sorted(todos, key=lambda todo: todo.start_by)
    return Preparing(here, tuple(_as_it_stands(todo, done, here) for todo in in_order), mind)


def tickable(session: ClassSession) -> dict[str, str]:
    """Titles of the jobs that somebody may call done, by their keys."""
    own = {ORDER: str(words.ORDER_TITLE), PRINT: str(words.PRINT_TITLE)}
    return own | {each.key: each.title for each in _beforehand(session.edition.recipe)}


def _beforehand(recipe: Recipe) -> tuple[Task | GlueUp, ...]:
    return (*recipe.preparation, *recipe.glue_ups)


def _plan(session: ClassSession, ordering: Ordering) -> tuple[Preparation, str]:
    """The dates, with the order among them; and what to mind about them."""
    recipe, zone = session.edition.recipe, ZoneInfo(session.workshop.zone)
    kits = kits_for(Heads(session.students, session.demonstrations), session.spares)
    jobs = _with_delivery(jobs_of(recipe, kits.all), ordering)
    openings, mind = session.workshop.openings, ""
    try:
        plan = preparation(jobs, session.begins, zone, openings)
    except ClassError:
        # More work than the openings of ten years hold: the dates are shown as if the doors stood open.
        plan, mind = preparation(jobs, session.begins, zone), words.undated(session.workshop)
    if not ordering.is_needed or ORDER in {job.key for job in jobs}:
        return plan, mind
    order = Job(ORDER, str(words.ORDER_TITLE), 0, ordering.days * 24 * 60)
    return with_order(plan, order, session.begins, needs_material(recipe)), mind


def _with_delivery(jobs: tuple[Job, ...], ordering: Ordering) -> tuple[Job, ...]:
    """The recipe's own order waits for the slowest supplier; where nothing is to order, it falls away."""
    if not ordering.is_needed:
        rest = (job for job in jobs if job.key != ORDER)
        return tuple(replace(job, after=tuple(key for key in job.after if key != ORDER)) for job in rest)
    days = ordering.days * 24 * 60
    return tuple(replace(job, wait=max(job.wait, days)) if job.key == ORDER else job for job in jobs)


def _dated(session: ClassSession, plan: Preparation, ordering: Ordering, here: datetime) -> Iterator[Todo]:
    chain = {dated.job.key for dated in plan.longest_chain}
    watch = {each.key: each.watch for each in _beforehand(session.edition.recipe)}
    for dated in plan.jobs:
        job = dated.job
        tells = words.ordering_words(ordering) if job.key == ORDER else watch.get(job.key, "")
        yield Todo(
            key=job.key,
            title=job.title,
            start_by=local(dated.start_by, plan.zone),
            minutes=job.minutes,
            # How long an order takes to come is told with who takes it.
            takes="" if job.key == ORDER and not job.minutes else words.job_words(job),
            tells=tells,
            link=_link(session, job.key),
            in_chain=job.key in chain,
            late=words.late_words(local(dated.start_by, plan.zone), here),
        )


def _link(session: ClassSession, key: str) -> Link:
    if key == ORDER:
        return Link(words.ORDER_LINK, reverse("classes:order", args=[session.pk]))
    if key in needs_material(session.edition.recipe):
        return Link(words.KIT_LINK, reverse("classes:kit", args=[session.pk]))
    return Link(words.PROJECT_LINK, session.edition.get_absolute_url())


def _own(session: ClassSession, book: Book, here: datetime) -> Iterator[Todo]:
    """What the class's list calls for. What only waits for somebody to act stands at now."""
    lost = sum(line.place is None or line in book.misplaced for line in book.taking)
    page = session.get_absolute_url()
    if lost:
        link = Link(words.SEAT_LINK, f"{page}#without-place")
        yield Todo(SEAT, words.seat_title(lost), here, link=link, ticked=False)
    if book.waiting and book.room:
        link = Link(words.OFFER_LINK, reverse("classes:offer", args=[session.pk]))
        free, waiting = book.room, len(book.waiting)
        yield Todo(
            OFFER, words.offer_title(free), here, tells=words.offer_words(waiting), link=link, ticked=False
        )
    if book.taking:
        link = Link(words.PRINT_LINK, f"{page}#papers")
        start_by = local(session.begins - PRINTED_BEFORE, here.tzinfo)  # type: ignore[arg-type]
        late = words.late_words(start_by, here)
        yield Todo(
            PRINT, str(words.PRINT_TITLE), start_by, tells=str(words.PRINT_WORDS), link=link, late=late
        )


def _as_it_stands(todo: Todo, done: dict[str, PreparationDone], here: datetime) -> Todo:
    row = done.get(todo.key) if todo.ticked else None
    return replace(todo, done=row, late="" if row else todo.late)
