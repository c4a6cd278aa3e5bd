"""Every page there is, each in the states it has: what axe, the HTML checker and the widths go through."""

from __future__ import annotations

import json
from collections.abc import Iterable

from django.test import Client

from club.base.access_table import TABLE
from club.home.demonstration import FOLDER
from club.people.models import Account
from tests.browser.class_pages import CLASS_PAGES, EMPTY_CLASS_PAGES
from tests.browser.furnished import LOCKED_OUT, NEWCOMER, WRONG_PASSWORD
from tests.browser.kit_pages import KIT
from tests.browser.planning_pages import EMPTY_PLANNING, PLANNING
from tests.browser.samples import NOBODY, Sample, for_anyone, for_helper, sign_in, wrong
from tests.browser.store_pages import EMPTY_STORES, STORES

WRONG_LATHE = {
    "number": "seven",
    "headstock_taper": "MT2",
    "nose_thread": "33",
    "through_bore": "2 3/0 in",
    "swing_over_bed": "10 in",
    "swing_over_banjo": "12 in",
    "speeds": "fast",
    "plate_speed": "9 999 999",
    "draw_bars": "A",
    "condition": "limited",
}
WRONG_MARKS = {"outside-rows": "4", "outside-1-at": "wide", "outside-1-diameter": "", "act": "show"}
HEADINGS = "workshop,number,through bore\n"
WRONG_LINES = HEADINGS + "Kiln Loft,1,2 3/0 in\nNowhere,2,\nKiln Loft,,9 mm"
GOOD_LINES = HEADINGS + "Kiln Loft,1,11/16 in\nKiln Loft,2,3/8 in\nKiln Loft,77,"


def dish_that_says(summary: str) -> str:
    """The text of one edition of a dish, another than the demonstration has kept."""
    library = json.loads((FOLDER / "library.json").read_text(encoding="utf-8"))
    recipes = (entry["recipe"] for entry in library["editions"])
    dish: dict[str, object] = next(recipe for recipe in recipes if recipe["key"] == "pocket-dish")
    return json.dumps(dish | {"summary": summary})


# fmt: off
SAMPLES = (
    for_anyone("sign-in", "people:sign_in", 0),
    sign_in("sign-in, wrong", 10, "ilse", 422),
    sign_in("sign-in, locked out", 3, LOCKED_OUT, 429),
    for_anyone("card", "home:card", 3, "lathe"),
    for_anyone("card, limited", "home:card", 3, "lathe limited"),
    for_anyone("card, out of service", "home:card", 3, "lathe out"),
    for_anyone("card, unmeasured", "home:card", 3, "lathe unmeasured"),
    Sample("card, for staff", "home:card", 6, "lathe"),
    Sample("measuring", "lathes:measuring", 3),
    for_anyone("measuring, for anyone", "lathes:measuring", 0),
    Sample("nothing here", "", 3, path="/nowhere/", status=404),
    Sample("nothing here, for anyone", "", 0, path="/nowhere/", reader=NOBODY, status=404),
    for_helper("not open to you", "people:list", 3, status=403),
    Sample("not taken", "lathes:new", 3, typed={"csrfmiddlewaretoken": "old"}, status=403),

    Sample("lathes", "lathes:list", 9),
    for_helper("lathes, for a helper", "lathes:list", 9),
    Sample("lathes, narrowed down", "lathes:list", 9, query="q=tisch&condition=out"),
    Sample("lathes, none fits", "lathes:list", 6, query="q=nowhere"),
    Sample("lathe", "lathes:lathe", 7, "lathe"),
    Sample("lathe, limited", "lathes:lathe", 7, "lathe limited"),
    Sample("lathe, out of service", "lathes:lathe", 7, "lathe out"),
    Sample("lathe, unmeasured", "lathes:lathe", 7, "lathe unmeasured"),
    for_helper("lathe, for a helper", "lathes:lathe", 7, "lathe unmeasured"),
    Sample("lathe, new", "lathes:new", 4),
    wrong("lathe, new, wrong", "lathes:new", 4, **WRONG_LATHE),
    Sample("lathe, mended", "lathes:mend", 7, "lathe"),
    wrong("lathe, mended, wrong", "lathes:mend", 7, "lathe", **WRONG_LATHE, condition_reason="x" * 200),
    Sample("condition", "lathes:condition", 6, "lathe limited"),
    wrong("condition, wrong", "lathes:condition", 6, "lathe", condition="out", revision="1"),
    wrong("condition, changed since", "lathes:condition", 12, "lathe", condition="in_service", revision="0"),
    Sample("lathe taken out", "lathes:remove", 6, "lathe"),
    wrong("lathe taken out, changed since", "lathes:remove", 12, "lathe", revision="0"),
    Sample("list brought in", "lathes:import", 3),
    wrong("list brought in, empty", "lathes:import", 3, lines=""),
    wrong("list brought in, wrong", "lathes:import", 7, lines=WRONG_LINES),
    Sample("list looked over", "lathes:import", 7, typed={"lines": GOOD_LINES}),
    Sample("workshops", "lathes:workshops", 4),
    for_helper("workshops, for a helper", "lathes:workshops", 4),
    Sample("workshop", "lathes:workshop", 6, "workshop"),
    Sample("workshop, new", "lathes:workshop_new", 3),
    wrong("workshop, new, wrong", "lathes:workshop_new", 3, name="", zone="Quernby", opening="evenings"),
    Sample("workshop, mended", "lathes:workshop_mend", 4, "workshop"),
    wrong("workshop, mended, wrong", "lathes:workshop_mend", 5, "workshop", name="Sluice Room", zone=""),
    Sample("cards", "home:cards", 6),
    Sample("cards, none ticked", "home:cards_pdf", 6, query="paper=a4", status=422),

    Sample("projects", "projects:list", 9),
    for_helper("projects, for a helper", "projects:list", 9),
    Sample("projects, narrowed down", "projects:list", 9, query="q=bowl&holding=screw_chuck&state=kept"),
    Sample("projects, none fits", "projects:list", 8, query="q=nowhere"),
    Sample("project", "home:project", 6, "project"),
    Sample("edition", "home:edition", 6, "edition"),
    Sample("edition, a draft", "home:edition", 6, "edition in the making"),
    for_helper("edition, for a helper", "home:edition", 6, "edition"),
    Sample("handout", "home:handout", 4, "edition"),
    for_helper("handout, for a helper", "home:handout", 4, "edition"),
    Sample("handout, on no paper", "home:handout_pdf", 4, "edition", query="paper=slate", status=422),
    Sample("draft kept", "projects:keep", 4, "draft to keep"),
    Sample("draft kept, not good", "projects:keep", 4, "draft"),
    wrong("draft kept, changed since", "projects:keep", 10, "draft to keep", revision="0"),
    Sample("draft thrown away", "projects:throw_away", 4, "draft"),
    wrong("draft thrown away, changed since", "projects:throw_away", 8, "draft", revision="0"),
    Sample("draft", "projects:draft", 4, "draft"),
    Sample("draft, drawing", "projects:draft_marks", 4, "draft"),
    wrong("draft, drawing, wrong", "projects:draft_marks", 4, "draft", **WRONG_MARKS),
    Sample("draft, title", "projects:draft_mend", 4, "draft"),
    wrong("draft, title, wrong", "projects:draft_mend", 4, "draft", title="", revision="1"),
    Sample("draft, step", "projects:draft_mend", 4, "draft", "at=mountings.0.steps.1"),
    Sample("draft, mounting", "projects:draft_mend", 4, "draft", "at=mountings.0"),
    Sample("draft, way of holding", "projects:draft_mend", 4, "draft", "at=mountings.0.holding&kind="),
    Sample("draft, glue-up", "projects:draft_mend", 4, "draft", "at=glue_ups.0"),
    Sample("draft, new step", "projects:draft_add", 4, "draft", "at=mountings.0.steps.6"),
    Sample("draft, new step, wrong", "projects:draft_add", 4, "draft", "at=mountings.0.steps.6",
           typed={"text": "", "minutes": "soon"}, status=422),
    Sample("draft, taken out", "projects:draft_take_out", 4, "draft", "at=easier"),
    Sample("draft, not taken out", "projects:draft_take_out", 4, "draft", "at=mountings.0.steps.5"),
    Sample("draft, taken out too late", "projects:draft_take_out", 8, "draft", "at=easier",
           typed={"revision": "0"}, status=422),
    Sample("project, new", "projects:new", 3),
    Sample("project, new, kinds missing", "projects:new", 3, query="blank=square", status=422),
    Sample("project, new, written", "projects:new", 3, query="blank=slab&held=scroll_chuck"),
    Sample("project, new, wrong", "projects:new", 4, query="blank=slab&held=scroll_chuck",
           typed={"title": "Bowl", "stands_out": "far"}, status=422),

    Sample("file brought in", "projects:bring_in", 3),
    wrong("file brought in, empty", "projects:bring_in", 3, text=""),
    wrong("file brought in, wrong", "projects:bring_in", 3, text=dish_that_says("")),
    Sample("file looked over", "projects:bring_in", 5, typed={"text": dish_that_says("A wider dish.")}),
    for_helper("what differs", "projects:difference", 5, "two editions"),
    Sample("course", "projects:course", 8, "course"),
    for_helper("course, for a helper", "projects:course", 8, "course"),
    Sample("course, new", "projects:course_new", 4),
    wrong("course, new, wrong", "projects:course_new", 4, title="", summary="x" * 700, lesson_2="nothing"),
    Sample("course, mended", "projects:course_mend", 8, "course"),
    wrong("course, mended, changed since", "projects:course_mend", 12, "course", title="Evenings",
          summary="One.", lesson_1="pocket-dish", revision="0"),
    Sample("course, deleted", "projects:course_delete", 7, "course"),
    wrong("course, deleted too late", "projects:course_delete", 11, "course", revision="0"),

    Sample("woods", "projects:woods", 3),
    Sample("woods, none fits", "projects:woods", 3, query="q=nowhere"),
    Sample("wood", "projects:wood", 3, "wood"),
    Sample("wood, not turned", "projects:wood", 3, "wood not turned"),
    Sample("finishes", "projects:finishes", 3),

    Sample("people", "people:list", 9),
    Sample("people, none found", "people:list", 6, query="name=nobody"),
    Sample("person, oneself", "people:person", 6, "coordinator"),
    Sample("person, with a role", "people:person", 7, "helper"),
    Sample("person, barred", "people:person", 6, "barred"),
    Sample("person, without sign-in", "people:person", 6, "student"),
    Sample("person, new", "people:new", 4),
    wrong("person, new, wrong", "people:new", 4, name="", email="at home"),
    Sample("person, mended", "people:mend", 7, "helper"),
    wrong("person, mended, changed since", "people:mend", 11, "helper", name="Maren", age_band="adult",
          revision="0"),
    Sample("role given", "people:give_role", 7, "helper"),
    wrong("role given, wrong", "people:give_role", 7, "helper"),
    Sample("role withdrawn", "people:withdraw_role", 4, "role of helper"),
    Sample("role withdrawn, the last key", "people:withdraw_role", 6, "role of coordinator"),
    Sample("sign-in given", "people:give_sign_in", 5, "student"),
    wrong("sign-in given, wrong", "people:give_sign_in", 5, "student", name="two words"),
    Sample("first password", "people:renew_password", 12, "renewed", typed={}),
    Sample("password renewed", "people:renew_password", 6, "helper"),
    Sample("sign-in barred", "people:bar_sign_in", 7, "helper"),
    Sample("sign-in barred, the last key", "people:bar_sign_in", 7, "coordinator"),
    Sample("own page", "people:me", 4),
    for_helper("own page, for a helper", "people:me", 4),
    wrong("own page, wrong", "people:me", 4, lengths=""),
    Sample("own password", "people:password", 3),
    Sample("own password, the first", "people:password", 3, reader=NEWCOMER),
    wrong("own password, wrong", "people:password", 3, current=WRONG_PASSWORD, new="short", again="long"),

    *STORES,
    *PLANNING,
    *CLASS_PAGES,
    *KIT,
)

# Before anything is in it.
EMPTY_CLUB = (
    Sample("empty club, lathes", "lathes:list", 5),
    Sample("empty club, lathe new", "lathes:new", 4),
    Sample("empty club, list brought in", "lathes:import", 3),
    Sample("empty club, workshops", "lathes:workshops", 4),
    Sample("empty club, projects", "projects:list", 8),
    Sample("empty club, cards", "home:cards", 5),
    Sample("empty club, people", "people:list", 8),
    *EMPTY_STORES,
    *EMPTY_PLANNING,
    *EMPTY_CLASS_PAGES,
)
# fmt: on

# Addresses that answer a GET with no page of their own.
NO_PAGE = {"lathes:export"}
NO_PAGE |= {"projects:take_away", "projects:edition_json", "projects:schema"}
# What these refuse, they refuse as a whole: there is no field to get wrong, or no page to say it on.
NO_FIELDS = {"people:sign_out", "people:open_sign_in", "people:renew_password", "people:bar_sign_in"}
NO_FIELDS |= {"classes:done", "stores:meets_remove"}
NO_FIELDS |= {"people:withdraw_role", "projects:draft_move", "projects:next_edition"}


def pages_without_sample() -> set[str]:
    """Addresses at which nobody would look."""
    seen = {sample.address for sample in SAMPLES if sample.typed is None and sample.status != 403}
    return {address for address, method in TABLE if method == "GET"} - seen - NO_PAGE


def forms_without_sample() -> set[str]:
    """Addresses whose form nobody would see refused."""
    refused = {sample.address for sample in SAMPLES if sample.typed is not None and sample.status == 422}
    return {address for address, method in TABLE if method == "POST"} - refused - NO_FIELDS


def clients(samples: Iterable[Sample] = SAMPLES) -> dict[str, Client]:
    """A client for each reader of the samples, signed in unless it is nobody."""
    found = {reader: Client() for reader in {sample.reader for sample in samples}}
    for reader in found.keys() - {NOBODY}:
        found[reader].force_login(Account.objects.get(name=reader))
    return found
