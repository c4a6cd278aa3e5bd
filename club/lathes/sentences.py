"""What people read when a thread, a setting, a bar or a list is refused, and what would be accepted."""

from __future__ import annotations

from django.utils.dates import WEEKDAYS
from django.utils.translation import gettext_lazy as _

from club.base.csv_rows import CsvError
from club.base.quantities.errors import QuantityError
from club.base.quantities.shown import thousands
from club.base.sentences import sentence
from club.lathes.domain.labelled_lines import LineError
from club.lathes.domain.opening_hours import Opening, OpeningError
from club.lathes.domain.own_draw_bars import OwnDrawBarError
from club.lathes.domain.speed_settings import SpeedSettingError
from club.lathes.domain.threads import ThreadError

THREAD = {
    "empty": _("No thread stands here. Write it as 3/8-16, 1\u00a01/4-8 or M33x3.5."),
    "too_long": _(
        "That is more than %(most)s characters. Write the thread as 3/8-16, 1\u00a01/4-8 or M33x3.5."
    ),
    "unreadable": _("This can't be read as a thread. Write it as 3/8-16, 1\u00a01/4-8 or M33x3.5."),
    "over_zero": _(
        "A fraction can't have 0 under the line. Write the thread as 3/8-16, 1\u00a01/4-8 or M33x3.5."
    ),
    "unit_missing": _(
        "This could be metric or inch. Write %(metric)s if it is metric, or 1\u00a01/4-8 for inches."
    ),
    "pitch_missing": _("%(diameter)s is only the diameter. Write the pitch after it, as in %(example)s."),
    "odd_diameter": _(
        "The diameter %(found)s is finer than is kept here. Write 64ths of an inch or four decimals."
    ),
    "odd_pitch": _("The pitch %(found)s is finer than is kept here. Write it with at most four decimals."),
    "odd_threads_per_inch": _(
        "%(found)s threads per inch can't be kept. Write a whole or half number, as 8 or 4.5."
    ),
    "diameter_out_of_range": _(
        "The diameter has to be between %(least)s\u00a0mm and %(most)s\u00a0mm. "
        "Write the thread as 3/8-16, 1\u00a01/4-8 or M33x3.5."
    ),
    "pitch_out_of_range": _(
        "A pitch of %(pitch)s\u00a0mm can't be kept. "
        "It has to be between %(least)s\u00a0mm and %(most)s\u00a0mm."
    ),
    "threads_per_inch_out_of_range": _(
        "%(found)s threads per inch can't be kept. They have to be between %(least)s and %(most)s."
    ),
    "too_coarse": _("In %(thread)s the pitch is more than a third of the diameter. Measure both again."),
    "other_series": _(
        "%(thread)s is %(series)s, not %(typed)s. Count the threads again, or leave the letters out."
    ),
}

SETTING_LEAD = _("Setting %(number)s reads “%(text)s”. %(wrong)s")
SETTING = {
    "too_long": _("That is more than %(most)s characters. Write one setting to a line, as belt 1: 620."),
    "too_many": _("These are %(found)s settings. At most %(most)s can be kept."),
    "no_label": _(
        "It has no name. Write one and a colon before the speed, as belt 1: 620 or dial: 250-3\u00a0200."
    ),
    "long_label": _("Its name has %(found)s characters. Shorten it to at most %(most)s."),
    "hidden_marks": _("There are marks in its name that can't be seen. Type it anew."),
    "twice": _("Setting %(earlier)s has the same name. Give this one another."),
    "no_speed": _("It has no speed. Write one after the colon, as belt 1: 620."),
    "open_range": _("The highest speed is missing. Write the range as 250-1\u00a0450."),
    "low_above_high": _("%(low)s is above %(high)s. Write the lower speed first."),
}

BAR_LEAD = _("Draw bar %(number)s reads “%(text)s”. %(wrong)s")
BAR = {
    "too_long": _(
        "That is more than %(most)s characters. Write one bar to a line, as A: 3/8-16, 14\u00a01/4\u00a0in."
    ),
    "too_many": _("These are %(found)s draw bars. At most %(most)s can be kept."),
    "no_label": _(
        "It has no name. Write one and a colon before the thread, as A: 3/8-16, 14\u00a01/4\u00a0in."
    ),
    "long_label": _("Its name has %(found)s characters. Shorten it to at most %(most)s."),
    "hidden_marks": _("There are marks in its name that can't be seen. Type it anew."),
    "twice": _("Draw bar %(earlier)s has the same name. Give this one another."),
    "two_readings": _(
        "The commas can be read in two ways. Write points in the numbers, as B: M10x1.5, 362.5\u00a0mm."
    ),
    "no_comma": _("Thread and length need a comma between them. Write it as A: 3/8-16, 14\u00a01/4\u00a0in."),
}
LENGTH_EXAMPLE = _("14\u00a01/4\u00a0in or 362\u00a0mm")

OPENING = {
    "unreadable": _("Line %(number)s reads “%(text)s”. Write day and hours as Mon 18:00-22:00."),
    "no_such_day": _(
        "Line %(number)s reads “%(text)s”, and no weekday is called %(day)s. "
        "Write it as Mon, Tue, Wed, Thu, Fri, Sat or Sun."
    ),
    "no_such_time": _(
        "Line %(number)s reads “%(text)s”, which no clock shows. Write the hours from 0:00 to 24:00."
    ),
    "no_length": _("Line %(number)s reads “%(text)s”. Write a later time behind the first one."),
    "too_many": _("That is more than %(most)s stretches a week. Write those in which somebody works here."),
    "overlap": _(
        "The stretch of %(day)s from %(begins)s lies in another one. Write one that holds both of them."
    ),
}


def thread_sentence(error: ThreadError) -> str:
    """Why a text is no thread, and how to write one."""
    return str(THREAD[error.code]) % error.values


def speed_setting_sentence(error: SpeedSettingError) -> str:
    """Which setting can't be kept, why, and what to write."""
    values = {
        name: thousands(value) if isinstance(value, int) else value for name, value in error.values.items()
    }
    reason = error.values.get("reason")
    wrong = sentence(reason) if isinstance(reason, QuantityError) else str(SETTING[error.code]) % values
    return _with_lead(str(SETTING_LEAD), error, wrong)


def own_draw_bar_sentence(error: OwnDrawBarError) -> str:
    """Which draw bar can't be kept, why, and what to write."""
    return _with_lead(str(BAR_LEAD), error, _wrong_with_bar(error))


def _wrong_with_bar(error: OwnDrawBarError) -> str:
    reason = error.values.get("reason")
    if isinstance(reason, ThreadError):
        return thread_sentence(reason)
    if isinstance(reason, QuantityError):
        return sentence(reason, str(LENGTH_EXAMPLE))
    return str(BAR[error.code]) % error.values


def opening_sentence(error: OpeningError) -> str:
    """Which stretch can't be kept, why, and how to write it."""
    values = {"number": error.number, **error.values}
    later = error.values.get("later")
    if isinstance(later, Opening):
        values |= {"day": WEEKDAYS[later.weekday], "begins": later.begins.strftime("%H:%M")}
    return str(OPENING[error.code]) % values


def _with_lead(lead: str, error: LineError, wrong: str) -> str:
    """An error of one line quotes it first; one of the whole text has nothing to quote."""
    if not error.number:
        return wrong
    return lead % {"number": error.number, "text": error.values["text"], "wrong": wrong}


TOO_LONG = _("Use at most %(limit_value)d characters.")
DATE_FOR_THREAD = _(
    "A spreadsheet has made a date of this thread. "
    "Write it as 1 x 8 tpi or 3/8 x 16 tpi, which it leaves alone."
)
LIST_STALE = _(
    "The lines or the lathes changed since they were looked over, so nothing was written. Look it over again."
)

LIST = {
    "empty": _("There is no line in it. The first one names the columns, the next ones are lathes."),
    "no_rows": _("Only the line with the columns is there. Write a line for each lathe below it."),
    "not_text": _("This is no CSV text. Save the sheet as CSV, then choose that file."),
    "too_large": _("The list is over 1 MB. Bring it in in parts."),
    "too_many_rows": _("The list has %(found)d lines. Bring it in in parts of at most %(most)d."),
    "too_many_headings": _("The first line has %(found)d columns. At most %(most)d can be read."),
    "long_cell": _("Line %(line)d: a cell has more than %(most)d characters. Shorten it."),
    "unreadable": _(
        "Line %(line)d: a quotation mark is not closed, or stands inside a cell. "
        "Write it twice, or take it out."
    ),
    "heading_twice": _("The column “%(heading)s” is there twice. Keep one of them."),
    "no_heading": _(
        "Line %(line)d has %(found)d cells, but the first line names %(headings)d. "
        "A cell with the separator in it wants quotation marks round it."
    ),
    "unknown_heading": _(
        "No column is called “%(heading)s”: take it out, or give it one of the names below."
    ),
    "missing_heading": _(
        "The column “%(heading)s” is missing. Without it nobody knows which lathe is meant."
    ),
}
MOST_QUOTED = 40
LINE = {
    "twice": _("Line %(line)d: lathe %(number)s stands in line %(earlier)d already. Keep one of them."),
    "no_workshop": _(
        "Line %(line)d, lathe %(number)s, workshop: There is none called “%(workshop)s” "
        "that you may write in. It would take: %(known)s."
    ),
    "no_workshop_named": _(
        "Line %(line)d, lathe %(number)s, workshop: Say which one the lathe stands in. "
        "It would take: %(known)s."
    ),
    "field": _("Line %(line)d, lathe %(number)s, %(heading)s: %(error)s"),
    # Most sentences about a field don't quote it, because in a form it stands just above them.
    "field_read": _("Line %(line)d, lathe %(number)s, %(heading)s reads “%(cell)s”. %(error)s"),
}


def csv_sentence(error: CsvError) -> str:
    return str(LIST[error.code]) % error.values


def field_sentence(line: int, number: str, heading: str, cell: str, error: str) -> str:
    """What is wrong with one cell; quotes the cell where the error doesn't."""
    quoted = not cell or len(cell) > MOST_QUOTED or "“" in error
    return line_sentence(
        "field" if quoted else "field_read",
        line=line,
        number=number or "?",
        heading=heading,
        cell=cell,
        error=error,
    )


def line_sentence(code: str, **values: object) -> str:
    return str(LINE[code]) % values
