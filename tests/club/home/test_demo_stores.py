"""The stores of the demonstration club: something for every project, and the gaps a club has."""

from __future__ import annotations

from datetime import UTC, date, datetime

import pytest
import time_machine
from django.db import transaction

from club.base.quantities.money import currency_called
from club.classes.kit_totals import totals_of
from club.classes.models import ClassSession
from club.home.demonstration import FOLDER, load_demonstration
from club.home.invention.stores import in_currency
from club.stores.models import Article, Held, MetSpecification, Offer, Supplier
from club.stores.specifications import specification_key
from club.stores.supplies import stocked
from projects.kit.boards import blanks_from
from projects.kit.supplies import BlankSupply
from projects.library.domain.materials import BlankNeed
from tests.projects.library.demonstration import RECIPES

TODAY = date(2026, 6, 3)
NOON = datetime(2026, 6, 3, 12, tzinfo=UTC)
# What a class of the club costs for each student: a few pounds, in pence. A bowl is the dearest.
A_FEW_POUNDS = range(200, 600)
NO_MORE_THAN_A_BOWL = range(200, 1500)
needs_club = pytest.mark.usefixtures("club")

pytestmark = pytest.mark.django_db


@pytest.fixture(scope="module")
def club(django_db_setup, django_db_blocker):
    """Loaded once for all of these tests, none of which writes."""
    with django_db_blocker.unblock(), transaction.atomic():
        load_demonstration(TODAY)
        yield
        transaction.set_rollback(True)


def coming_kits():
    """Those of the classes to come, the next one first, each after what the ones before it take."""
    with time_machine.travel(NOON, tick=False):
        return [totals_of(session).totals for session in ClassSession.objects.coming(NOON).planned().whole()]


def codes(kit):
    return {finding.code for line in kit.lines for finding in line.findings}


@needs_club
def test_every_specification_of_every_project_is_met_by_an_article_of_its_kind():
    met = set(MetSpecification.objects.values_list("article__kind", "key"))
    asked_for = {
        (need.kind, specification_key(need.specification)) for recipe in RECIPES for need in recipe.materials
    }

    assert asked_for - met == set()


@needs_club
def test_the_next_class_is_complete_and_costs_a_few_pounds_a_head():
    kit, *_later = coming_kits()

    assert kit.complete
    assert kit.findings == ()
    assert kit.cost_a_head in A_FEW_POUNDS
    assert len(kit.orders) == 3


@needs_club
def test_the_next_class_finds_a_stick_that_is_too_thin_one_nobody_measured_and_a_wet_lot():
    kit, *_later = coming_kits()

    assert codes(kit) == {"too_thin_for_collet", "not_measured", "too_wet"}


@needs_club
def test_of_the_later_classes_one_wants_for_birch_that_nobody_sells():
    _next, *later = coming_kits()
    missing = [line for kit in later for line in kit.lines if not line.complete]

    assert [line.purchase.missing for line in missing] == [4]
    assert [kit.complete for kit in later].count(False) == 1
    assert all(kit.cost_a_head in NO_MORE_THAN_A_BOWL for kit in later)


@needs_club
def test_every_board_gives_the_blanks_it_is_there_for():
    barren = [
        (recipe.title, board)
        for recipe in RECIPES
        for key, supply in stocked(recipe).supplies.items()
        if isinstance(supply, BlankSupply)
        for board in (*supply.offers, *supply.shelf)
        if not blanks_from(board, _blank(recipe, key), supply.saw)
    ]

    assert barren == []


def _blank(recipe, key):
    need = next(need for need in recipe.materials if need.key == key)
    assert isinstance(need, BlankNeed)
    return need.blank or recipe.blank


@needs_club
def test_the_shelves_hold_what_shelves_of_a_club_hold():
    held = Held.objects.all()

    assert held.filter(fit=False).count() == 2
    assert held.exclude(cut_for="").exists()
    assert held.filter(article__kind=Article.Kind.LIQUID).count() > 5
    assert not held.filter(where="").exists()


@needs_club
def test_suppliers_differ_in_what_their_way_costs():
    suppliers = list(Supplier.objects.all())

    assert len(suppliers) == 5
    assert len({supplier.delivery for supplier in suppliers}) == 4
    assert {supplier.delivery_days == 0 for supplier in suppliers} == {True, False}
    assert any(supplier.least_order for supplier in suppliers)
    assert [offer.price % 100 > 0 for offer in Offer.objects.all()].count(True) > 40


@pytest.mark.parametrize(("code", "typed"), [("GBP", "12.50"), ("JPY", "1\u00a0250"), ("KWD", "1.250")])
def test_prices_load_whatever_currency_an_installation_has(code, typed):
    assert in_currency("12.50", currency_called(code)) == typed


def test_nothing_of_the_demonstration_is_a_stopper_or_a_cork():
    """Bottle stoppers are check values of the trade for tests, so the demonstration makes none."""
    files = [path.read_text(encoding="utf-8").casefold() for path in FOLDER.iterdir()]

    assert len(files) > 8
    assert not any(word in text for text in files for word in ("stopper", "cork"))
