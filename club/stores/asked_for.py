"""What the projects ask for, by kind, and which articles meet it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from club.stores.models import Article, MetSpecification
from club.stores.specifications import specification_key
from projects.library.models import Edition


@dataclass(frozen=True)
class AskedFor:
    """One specification, the projects that ask for it by their titles, and what meets it."""

    kind: str
    specification: str
    titles: tuple[str, ...]
    articles: tuple[Article, ...]

    @property
    def kind_words(self) -> str:
        return str(Article.Kind(self.kind).label)


def asked_for() -> list[AskedFor]:
    """Every specification of the editions that people mean, by kind and in words; in two queries."""
    titles: dict[tuple[str, str], list[str]] = defaultdict(list)
    written: dict[tuple[str, str], str] = {}
    for title, kind, specification in _needs():
        what = kind, specification_key(specification)
        written.setdefault(what, specification)
        titles[what].append(title)
    met = _met()
    found = [
        AskedFor(kind, text, tuple(dict.fromkeys(titles[kind, key])), tuple(met[kind, key]))
        for (kind, key), text in written.items()
    ]
    order = Article.Kind.values
    return sorted(found, key=lambda each: (order.index(each.kind), each.specification.casefold()))


def asked_of(article: Article) -> list[str]:
    """What projects ask for of this kind and the article isn't said to meet."""
    met = {each.key for each in article.met.all()}
    asked = {specification_key(text): text for _title, kind, text in _needs() if kind == article.kind}
    return sorted((text for key, text in asked.items() if key not in met), key=str.casefold)


def _needs() -> Iterator[tuple[str, str, str]]:
    """Title, kind and specification of each need, straight from the documents: many are read at once."""
    newest = Edition.objects.newest().order_by("title", "pk")
    for title, recipe in newest.values_list("title", "recipe_json"):
        for need in recipe.get("materials", ()):
            yield title, need["kind"], need["specification"]


def _met() -> dict[tuple[str, str], Sequence[Article]]:
    found: dict[tuple[str, str], list[Article]] = defaultdict(list)
    for met in MetSpecification.objects.select_related("article").order_by("article__name"):
        found[met.article.kind, met.key].append(met.article)
    return defaultdict(list, found)
