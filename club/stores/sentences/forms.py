"""What the forms of the stores ask for, by kind, and what they say when something can't be kept."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from club.stores.models import Article

Kind = Article.Kind
Words = str | Promise

NAME_NEEDED = _("Write what people ask for, as maple dowel 1/2\u00a0in.")
ARTICLE_TAKEN = _("There is an article of this name already: give this one another, or mend that one.")
SUPPLIER_TAKEN = _("There is a supplier of this name already: give this one another, or mend that one.")
SUPPLIER_NAME_NEEDED = _("Write how the supplier is called.")
KERF_NEEDED = _("Write how wide your saw cuts, as 1/8\u00a0in or 3\u00a0mm: each cut takes that much.")
CHOOSE_SUPPLIER = _("Choose who sells it.")
CHOOSE_ARTICLE = _("Choose one of these articles, or add a new one.")
PACK_NEEDED = _("Write what the supplier calls it, as bag of 50.")
PACK_TAKEN = _("This supplier offers a pack of this name already: mend that one, or call this one otherwise.")
NO_SPECIFICATION = _("Tick one of them, or write one as a project has it.")
SIZES_OF_CUT = _("What is cut has the size of its project: leave the sizes empty, or choose “not cut yet”.")
NOT_CUT = _("not cut yet")

# What stands in a pack, and what is counted on the shelf.
HOLDS: Mapping[str, Words] = {
    Kind.SHEET: _("sheets in the pack"),
    Kind.PIECE: _("pieces in the pack"),
    Kind.CONSUMED: _("pieces in the pack"),
    Kind.LIQUID: _("amount in it"),
    Kind.ADHESIVE: _("amount in it"),
}
AMOUNT: Mapping[str, Words] = {
    Kind.LENGTH_STOCK: _("sticks of this length"),
    Kind.BLANK: _("boards of this size, or blanks cut"),
    Kind.SHEET: _("whole sheets, or pieces cut"),
    Kind.PIECE: _("pieces"),
    Kind.CONSUMED: _("pieces"),
    Kind.LIQUID: _("amount"),
    Kind.ADHESIVE: _("amount"),
}
AMOUNT_HELP: Mapping[str, Words] = {
    Kind.LIQUID: _("As 500\u00a0ml or 16\u00a0fl\u00a0oz; 0 when it is used up."),
    Kind.ADHESIVE: _("As 1\u00a0kg or 8\u00a0oz; 0 when it is used up."),
}
COUNT_HELP = _("0 when it is used up.")
HOLDS_HELP: Mapping[str, Words] = {
    Kind.LIQUID: _("As 500\u00a0ml or 16\u00a0fl\u00a0oz."),
    Kind.ADHESIVE: _("As 1\u00a0kg or 8\u00a0oz."),
}
# What stands behind each kind where one is chosen.
KIND_HELP: Mapping[str, Words] = {
    Kind.LENGTH_STOCK: _("dowels, squares and rods, cut to length"),
    Kind.BLANK: _("wood from which blanks are ripped and cut, and blanks that are cut already"),
    Kind.PIECE: _("corks, ferrules, hinges, by the piece"),
    Kind.SHEET: _("sandpaper and other sheets that are torn or cut"),
    Kind.LIQUID: _("oil, varnish, polish and paste, by volume"),
    Kind.ADHESIVE: _("by weight"),
    Kind.CONSUMED: _("respirators, paper towels"),
}
CUT_FOR_HELP = _("Then the amount counts what was cut.")


def kinds_to_choose() -> list[tuple[str, Words, Words]]:
    """Each kind with its word and what is meant by it."""
    return [(kind.value, kind.label, KIND_HELP[kind]) for kind in Article.Kind]
