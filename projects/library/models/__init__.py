from __future__ import annotations

from projects.library.models.course import Course, CourseLesson
from projects.library.models.edition import Edition, EditionWord
from projects.library.models.project import Project

__all__ = ["Course", "CourseLesson", "Edition", "EditionWord", "Project"]
