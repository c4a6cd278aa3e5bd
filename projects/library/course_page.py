"""The lessons of a course, each with the edition of its project that people mean."""

from __future__ import annotations

from dataclasses import dataclass

from projects.library.models import Course, Edition, Project
from projects.library.sentences.holding import holding_name


@dataclass(frozen=True)
class Lesson:
    """`edition` is None for a project without any."""

    number: int
    key: str
    edition: Edition | None
    holdings: tuple[str, ...] = ()
    minutes: int = 0

    @property
    def title(self) -> str:
        return self.edition.title if self.edition else self.key


def lessons_of(course: Course) -> list[Lesson]:
    """In their order; asks for nothing more when the course came whole."""
    return [_lesson(number, lesson.project) for number, lesson in enumerate(course.lessons.all(), 1)]


def _lesson(number: int, project: Project) -> Lesson:
    key = project.key
    edition = max(project.editions.all(), key=lambda each: (not each.is_draft, each.number), default=None)
    if edition is None:
        return Lesson(number, key, None)
    ways = (holding_name(mounting.holding) for mounting in edition.recipe.mountings)
    return Lesson(number, key, edition, tuple(dict.fromkeys(ways)), edition.recipe.time.hands_on)
