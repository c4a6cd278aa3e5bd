"""The demonstration club's stores: who sells what, and what lies on the shelves."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from django.forms import Form

from club.base.quantities.money import Currency, currency_called, parse_money, show_money
from club.base.quantities.shown import NO_BREAK_SPACE
from club.home.invention.lists import lines_of
from club.people.models import Account
from club.stores.actions import add_article, add_held, add_offer, add_supplier
from club.stores.forms.article import ArticleForm
from club.stores.forms.held import HeldForm
from club.stores.forms.offer import OfferForm
from club.stores.forms.supplier import SupplierForm
from club.stores.models import Article, Held, Offer, Supplier
from club.stores.money import own_currency

PRICED_IN = currency_called("GBP")
MONEY = ("price", "delivery", "least_order")
Typed = Mapping[str, str]


def load_stores(by: Account) -> None:
    suppliers = {typed["name"]: _supplier(by, typed) for typed in _typed("suppliers.csv")}
    articles = {
        typed["name"]: (_article(by, typed), typed["specification"]) for typed in _typed("articles.csv")
    }
    for typed in _typed("offers.csv"):
        article, _met = articles[typed["article"]]
        _offer(by, article, suppliers[typed["supplier"]], typed)
    for typed in _typed("shelf.csv"):
        _held(by, *articles[typed["article"]], typed)


def _typed(name: str) -> Iterator[dict[str, str]]:
    """What somebody would type into a form for each line of a list."""
    for line in lines_of(name):
        typed = {heading.replace(" ", "_"): cell for heading, cell in line.cells.items()}
        yield typed | {field: in_currency(typed[field], own_currency()) for field in MONEY if field in typed}


def in_currency(price: str, currency: Currency) -> str:
    """As many minor units of another currency: 12.50 is 1250 where money has no decimals."""
    minor = parse_money(price, PRICED_IN)
    return show_money(minor, currency).rpartition(NO_BREAK_SPACE)[0]


def _supplier(by: Account, typed: Typed) -> Supplier:
    form = SupplierForm(typed, Supplier())
    _check(form, typed)
    return add_supplier(by, form.filled())


def _article(by: Account, typed: Typed) -> Article:
    form = ArticleForm(typed, Article(kind=typed["kind"].replace(" ", "_")), typed["specification"])
    _check(form, typed)
    return add_article(by, form.filled(), form.met)


def _offer(by: Account, article: Article, supplier: Supplier, typed: Typed) -> None:
    given = {**typed, "supplier": str(supplier.pk), "revision": str(article.revision)}
    form = OfferForm(given, Offer(article=article), [supplier])
    _check(form, typed)
    add_offer(by, form.filled(), article.revision)


def _held(by: Account, article: Article, met: str, typed: Typed) -> None:
    fit = {"fit": "on"} if typed["fit"] == "yes" else {}
    given = {**typed, "fit": "", "revision": str(article.revision)} | fit
    form = HeldForm(given, Held(article=article), [met] if met else [])
    _check(form, typed)
    add_held(by, form.filled(), article.revision)


def _check(form: Form, typed: Typed) -> None:
    if not form.is_valid():
        raise ValueError(typed, form.errors.as_json())
