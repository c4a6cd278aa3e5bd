"""What people read when a list, or a lathe somebody else changed, can't be written: one sentence each."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

from club.base.csv_rows import CsvError

STALE = _(
    "Somebody else changed this lathe since you opened it, so nothing was written. "
    "Open it anew in another window, compare, and write there what is yours."
)
LIST_STALE = _("The lines or the lathes changed since they were looked over, so nothing was written. Look it over again.")

LIST = {
    "empty": _("There is no line in it. The first one names the columns, the next ones are lathes."),
    "no_rows": _("Only the line with the columns is there. Write a line for each lathe below it."),
    "not_text": _("This is no CSV text. Save the sheet as CSV, then choose that file."),
    "too_large": _("The list is over 1 MB. Bring it in in parts."),
    "too_many_rows": _("The list has %(found)d lines. Bring it in in parts of at most %(most)d."),
    "long_cell": _("Line %(line)d: a cell has more than %(most)d characters. Shorten it."),
    "unreadable": _("Line %(line)d: a quotation mark is opened and not closed, or stands in the middle of a cell. Write it twice, or take it out."),
    "heading_twice": _("The column %(heading)s is there twice. Keep one of them."),
    "no_heading": _("Line %(line)d has %(found)d cells for %(headings)d columns. A cell with the separator in it wants quotation marks round it."),
    "unknown_heading": _("No column is called %(heading)s. The names of the columns stand below."),
    "missing_heading": _("The column %(heading)s is missing. Without it nobody knows which lathe is meant."),
}
LINE = {
    "twice": _("Line %(line)d: lathe %(number)s stands in line %(earlier)d already. Keep one of them."),
    "no_workshop": _("Line %(line)d, workshop: there is none called %(workshop)s that you may write in. It would take: %(known)s."),
    "no_workshop_named": _("Line %(line)d, workshop: say which one the lathe stands in. It would take: %(known)s."),
    "field": _("Line %(line)d, %(heading)s: %(error)s"),
}


def csv_sentence(error: CsvError) -> str:
    return str(LIST[error.code]) % error.values


def line_sentence(code: str, **values: object) -> str:
    return str(LINE[code]) % values
