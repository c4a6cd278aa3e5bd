"""The stick: a mark for each day up to the class, short where nothing is to be begun."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from club.classes.preparing import Todo
from club.home.stick import MOST_EMPTY, stick

# A Wednesday, and the Thursday of the week after.
TODAY, CLASS = date(2026, 11, 25), date(2026, 12, 3)


def todo(day: int, *, in_chain: bool = False) -> Todo:
    """Something that has to be begun so many days from today."""
    at = datetime.combine(TODAY, datetime.min.time()) + timedelta(days=day)
    return Todo(f"job {day}", "Job", at, in_chain=in_chain)


def drawn(*todos: Todo, class_day: date = CLASS) -> str:
    """A letter for each mark: work, empty, now, gap; in capitals where the chain runs."""
    marks = stick(sorted(todos, key=lambda each: each.start_by), TODAY, class_day)
    return "".join(_letter(mark) for mark in marks)


def _letter(mark) -> str:
    letter = "g" if mark.last else "n" if mark.is_today else "e" if mark.is_empty else "w"
    return letter.upper() if mark.in_chain else letter


def test_every_day_has_its_mark_up_to_the_one_before_the_class():
    assert drawn(todo(2), todo(6)) == "neweeewe"


def test_a_day_that_has_passed_stands_before_today():
    assert drawn(todo(-2)) == "wen" + "g"


def test_the_class_s_own_day_has_a_mark_where_something_is_to_be_begun_on_it():
    marks = stick([todo(8)], TODAY, CLASS)

    assert (marks[-1].day, len(marks[-1].todos)) == (CLASS, 1)
    assert stick([], TODAY, CLASS)[-1].day < CLASS


def test_the_chain_runs_from_its_first_job_that_is_left():
    assert drawn(todo(1), todo(3, in_chain=True), todo(5), todo(6, in_chain=True)) == "nweWEWWE"


def test_long_empty_runs_are_broken_off_with_their_days():
    marks = stick([todo(20)], TODAY, TODAY + timedelta(days=21))

    gap = next(mark for mark in marks if mark.last)
    assert (gap.day, gap.last, gap.days) == (TODAY + timedelta(1), TODAY + timedelta(19), 19)
    assert drawn(todo(MOST_EMPTY + 1), class_day=TODAY + timedelta(MOST_EMPTY + 2)) == "n" + "e" * 6 + "w"
    assert drawn(todo(MOST_EMPTY + 2), class_day=TODAY + timedelta(MOST_EMPTY + 3)) == "ngw"


def test_on_the_day_of_the_class_there_is_only_now():
    assert drawn(class_day=TODAY) == "n"


@given(st.lists(st.integers(-400, 100), max_size=12), st.integers(0, 100))
def test_no_day_and_no_job_is_lost(days, until):
    todos = sorted((todo(min(day, until)) for day in days), key=lambda each: each.start_by)
    class_day = TODAY + timedelta(days=until)

    marks = stick(todos, TODAY, class_day)

    assert [each for mark in marks for each in mark.todos] == todos
    assert all(each.start_by.date() == mark.day for mark in marks for each in mark.todos)
    for earlier, later in pairwise(marks):
        assert later.day == (earlier.last or earlier.day) + timedelta(days=1)
    assert sum(mark.is_today for mark in marks) == 1
