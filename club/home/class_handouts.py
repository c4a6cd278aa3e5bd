"""The handouts of a class: one edition, drawn once, and a part for each student with their name on it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import Any

from django.http import Http404
from django.template.loader import render_to_string

from club.base.printing import Paper
from club.base.quantities.length import LengthStyle
from club.classes.models import ClassSession
from club.classes.register import Listed, listed
from club.home.project_page import handout_of, handout_page_of


def student_of(session: ClassSession, number: int, now: datetime) -> Listed:
    """The student of this number on the class's list; 404 for one who isn't in."""
    found = (each for each in listed(session, now) if each.row.number == number)
    student = next(found, None)
    if student is None:
        raise Http404
    return student


def paper_of(
    session: ClassSession, students: Sequence[Listed], lengths: LengthStyle, paper: Paper
) -> dict[str, Any]:
    """All students' handouts for one document. What is the same on all of them is made once."""
    taught = handout_of(session.edition, lengths, paper)
    body = render_to_string("print/_handout_body.html", {**taught, "paper": paper.value})
    return {**taught, "session": session, "students": students, "body": body}


def page_of(session: ClassSession, student: Listed, lengths: LengthStyle) -> dict[str, Any]:
    """One student's handout as a page."""
    return {**handout_page_of(session.edition, lengths), "session": session, "student": student}
