"""The kit of a class, after what the stores promise to the classes before it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from django.db.models import Q
from django.utils import timezone

from club.classes.models import ClassSession
from club.stores.supplies import Stocked, specification_key, stocked
from projects.kit.counting import Heads
from projects.kit.in_turn import ClassKit, in_turn, with_own_keys
from projects.kit.promised import Articles
from projects.kit.totals import Totals
from projects.library.domain.materials import Need
from projects.library.models import Edition


@dataclass(frozen=True)
class Promise:
    """So much of what a need asks for is taken off its shelf by a class before, in the unit of its kind."""

    session: ClassSession
    key: str
    amount: int


@dataclass(frozen=True)
class ClassTotals:
    """Totals by the keys of the recipe's needs; `promises` are what classes before take off the shelves."""

    session: ClassSession
    totals: Totals
    stocked: Stocked
    promises: tuple[Promise, ...]

    def needs(self, keys: Iterable[str]) -> list[Need]:
        """The recipe's own needs behind a line."""
        wanted = set(keys)
        return [need for need in self.session.edition.recipe.materials if need.key in wanted]


def totals_of(session: ClassSession) -> ClassTotals:
    """What is needed, what of it lies there and what is bought, in four queries however many classes come.

    Classes that are planned, not over, and begin before this one are served first, in whichever workshop: the
    stores are the whole club's.
    """
    before = classes_before(session)
    kits = [*(_kit_of(each, f"{each.pk}:") for each in before), _kit_of(session, "")]
    needs = tuple(need for kit in kits for need in kit.recipe.materials)
    found = stocked(replace(session.edition.recipe, materials=needs), apart=True)
    articles = {key: {str(each.pk) for each in met} for key, met in found.articles.items()}
    *earlier, own = in_turn(kits, found.supplies, found.suppliers, articles)
    taken = dict(zip(before, earlier, strict=True))
    return ClassTotals(session, own, found, tuple(_promises(kits[-1], taken, articles)))


def classes_before(session: ClassSession) -> list[ClassSession]:
    """Those whose kits come off the shelves first, in order."""
    sooner = Q(begins__lt=session.begins) | Q(begins=session.begins, pk__lt=session.pk)
    coming = ClassSession.objects.planned().coming(timezone.now()).filter(sooner)
    before = list(coming.select_related("edition__project", "workshop"))
    editions: dict[int, Edition] = {session.edition_id: session.edition}
    for each in before:
        # A recipe is read from its document once, however many classes make it.
        each.edition = editions.setdefault(each.edition_id, each.edition)
    return before


def _kit_of(session: ClassSession, prefix: str) -> ClassKit:
    """Specifications by their key, since the stores don't mind how they are spelled."""
    recipe = with_own_keys(replace(session.edition.recipe, spares=session.spares), prefix)
    needs = (replace(need, specification=specification_key(need.specification)) for need in recipe.materials)
    heads = Heads(session.students, session.demonstrations)
    return ClassKit(replace(recipe, materials=tuple(needs)), heads)


def _promises(own: ClassKit, taken: Mapping[ClassSession, Totals], articles: Articles) -> Iterator[Promise]:
    for session, totals in taken.items():
        for line in totals.lines:
            met = {article for key in line.keys for article in articles[key]}
            for need in own.recipe.materials:
                if line.on_shelf and met & set(articles[need.key]):
                    yield Promise(session, need.key, line.on_shelf)
