"""What people read while they write a draft: what is wrong with a field, and what would be accepted."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

NOTHING_HERE = _("Nothing stands here yet: write it in a few words.")
LONG_TEXT = _("That is more than %(most)s characters: say it in fewer.")
HIDDEN_MARKS = _("There are marks in this that can't be seen: type it by hand here, without pasting.")
WHOLE_NUMBER = _("Write a whole number from %(least)s to %(most)s.")
CHOOSE = _("Choose one of those that are offered.")
NOTHING_OFFERED = _("Nothing is written yet that could be chosen here.")
TOO_FEW = _("At least %(least)s are needed here.")
TOO_MANY = _("No more than %(most)s have room here.")
NO_SKILL = _("Write each skill in plain letters, with commas between, as parting tool, beads.")
NO_GRIT = _("Write whole numbers with commas between, as 120, 180, 240.")
# What the table of marks answers when it can't be changed so.
ROW_WORDS = {
    "no_row": _("Choose a row first, by the number at its left."),
    "full": _("No more than 60 marks have room here."),
    "short": _("A drawing has two marks at least: its ends."),
}
TITLE_TAKEN = _("A project of this name is in the library already: give this one another title.")
