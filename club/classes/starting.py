"""What the form of a new class begins with: the recipe's time, and what the last class of the project had."""

from __future__ import annotations

from typing import Any

from club.classes.domain.time_plan import time_plan
from club.classes.models import ClassSession
from club.classes.models.class_session import LONGEST
from club.lathes.models import Workshop
from projects.library.models import Edition

# A quarter of an hour: classes begin and end when a clock is easily read.
STEP = 15
AS_LAST_TIME = ("minutes", "sittings", "minimum", "demonstration_lathe", "demonstrations")


def last_of(edition: Edition, workshop: Workshop) -> ClassSession | None:
    """The latest class of this project, in whatever edition, in this workshop."""
    classes = ClassSession.objects.planned().filter(edition__project=edition.project_id, workshop=workshop)
    return classes.select_related("edition", "demonstration_lathe").order_by("-begins").first()


def started(edition: Edition, workshop: Workshop, last: ClassSession | None) -> ClassSession:
    """A class not yet saved, as it was the last time; the first time with the minutes its recipe needs."""
    facts = {name: getattr(last, name) for name in AS_LAST_TIME} if last else {}
    return ClassSession(edition=edition, workshop=workshop, **{"minutes": usual_minutes(edition), **facts})


def lathes_of(last: ClassSession | None) -> dict[str, Any]:
    """What the form ticks. The first time nothing: somebody has to say which lathes hold the project."""
    return {"lathes": list(last.lathes.all())} if last else {}


def usual_minutes(edition: Edition, sittings: int = 1) -> int:
    """What the recipe's times add up to, rounded up to a quarter of an hour."""
    needed = time_plan(edition.recipe.time, sittings, LONGEST).needed
    return min(LONGEST, max(STEP, -(-needed // STEP) * STEP))
