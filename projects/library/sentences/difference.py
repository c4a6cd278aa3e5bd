"""What differs between two editions, a sentence for each change, in the order of the newer one."""

from __future__ import annotations

from django.utils.text import capfirst
from django.utils.translation import gettext as _

from club.base.quantities.length import LengthStyle
from projects.library.domain.difference import Change, ChangeKind, Stop, difference
from projects.library.domain.recipe import Recipe
from projects.library.sentences.leads import lead, stop_word
from projects.library.sentences.values import Speech, speech


def difference_sentences(old: Recipe, new: Recipe, lengths: LengthStyle) -> tuple[str, ...]:
    """`Mounting 2, step 4, minutes: 5 became 8.`; none exactly when the two are equal.

    Places are numbered as in the newer edition, what was taken out as in the older one.
    """
    before, after = speech(lengths, old), speech(lengths, new)
    return tuple(_sentence(change, before, after) for change in difference(old, new))


def _sentence(change: Change, before: Speech, after: Speech) -> str:
    match change.kind:
        case ChangeKind.ADDED:
            values = {"where": lead(change.place), "what": after.thing(change.after)}
            return _ended(_("%(where)s is new: %(what)s") % values)
        case ChangeKind.TAKEN_OUT:
            values = {"where": _before(change.place), "what": before.thing(change.before)}
            return _ended(_("%(where)s is taken out: %(what)s") % values)
        case ChangeKind.MOVED:
            values = {"where": lead(change.place), "before": _numbered(change)}
            return _("%(where)s was %(before)s.") % values
        case ChangeKind.REPLACED:
            return _became(lead(change.place), before.thing(change.before), after.thing(change.after))
    return _changed(change, before, after)


def _changed(change: Change, before: Speech, after: Speech) -> str:
    where = lead((*change.place, Stop(change.field)))
    was, now = before.value(change.field, change.before), after.value(change.field, change.after)
    if not was:
        return _("%(where)s: %(what)s is new.") % {"where": where, "what": now}
    if not now:
        return _("%(where)s: %(what)s is taken out.") % {"where": where, "what": was}
    if before.alike(change.field, change.before, change.after):
        was = before.exactly(change.field, change.before)
        now = after.exactly(change.field, change.after)
    return _became(where, was, now)


def _became(where: str, was: str, now: str) -> str:
    return _ended(_("%(where)s: %(was)s became %(now)s") % {"where": where, "was": was, "now": now})


def _before(place: tuple[Stop, ...]) -> str:
    """Where something stood: the number at the end is the old one, those before it are new ones."""
    *outer, last = place
    if last.number is None:
        return lead(place)
    was = _("what was %(thing)s") % {"thing": stop_word(last)}
    return _joined(lead(outer), was)


def _joined(outer: str, inner: str) -> str:
    return _("%(outer)s, %(inner)s") % {"outer": outer, "inner": inner} if outer else capfirst(inner)


def _numbered(change: Change) -> str:
    """`step 3`, with the number before the move."""
    assert isinstance(change.before, int)
    return stop_word(Stop(change.place[-1].field, change.before))


def _ended(sentence: str) -> str:
    """With a full stop, unless what is told of ends a sentence itself."""
    if sentence.removesuffix("”").endswith((".", "!", "?")):
        return sentence
    return _("%(sentence)s.") % {"sentence": sentence}
