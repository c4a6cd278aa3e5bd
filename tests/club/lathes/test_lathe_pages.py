from __future__ import annotations

import pytest
from django.urls import reverse

from club.base.access import Role
from club.base.changes import changes_of
from club.base.models import Change
from club.lathes.models import Lathe
from tests.factories import LatheFactory, WorkshopFactory

pytestmark = pytest.mark.django_db

GOOD = {
    "number": "7",
    "plate": "Bench lathe, 3/4 hp",
    "headstock_taper": "MT2",
    "tailstock_taper": "MT2",
    "nose_thread": "1 1/4 x 8",
    "register_diameter": "1.25 in",
    "register_length": "",
    "through_bore": "1/2 in",
    "nose_to_handwheel": "400 mm",
    "swing_over_bed": "12 in",
    "swing_over_banjo": "9 in",
    "centres_greatest": "36 in",
    "centres_least": "4 1/2 in",
    "speeds": "belt 1: 620\nbelt 2: 1 000-1 450",
    "draw_bars": "A: 3/8-16, 14 1/4 in",
    "plate_speed": "2 500",
    "reverse": "no",
    "spindle_lock": "yes",
    "no_volt_release": "",
    "low_stand": "",
    "condition": "in_service",
    "condition_reason": "",
}


@pytest.fixture
def kiln():
    return WorkshopFactory(name="Kiln Room")


def typed_of(lathe):
    return GOOD | {
        "workshop": str(lathe.workshop_id),
        "number": str(lathe.number),
        "revision": str(lathe.revision),
    }


def test_a_lathe_is_added_as_it_was_typed(as_coordinator, kiln):
    answer = as_coordinator.post(reverse("lathes:new"), GOOD | {"workshop": kiln.pk})

    lathe = Lathe.objects.get()
    assert answer["Location"] == lathe.get_absolute_url()
    assert (lathe.through_bore.nm, lathe.through_bore.typed) == (12_700_000, "1/2 in")
    assert lathe.nose_thread == "1 1/4-8"
    assert [(setting.label, setting.low, setting.high) for setting in lathe.speeds] == [
        ("belt 1", 620, 620),
        ("belt 2", 1000, 1450),
    ]
    assert lathe.draw_bars[0].length.typed == "14 1/4 in"
    assert (lathe.reverse, lathe.spindle_lock, lathe.no_volt_release) == (False, True, None)


def test_the_page_says_who_changed_what_from_what_to_what(as_coordinator, kiln):
    lathe = LatheFactory(workshop=kiln, number=7)
    as_coordinator.post(reverse("lathes:mend", args=[lathe.pk]), typed_of(lathe))

    as_coordinator.post(
        reverse("lathes:mend", args=[lathe.pk]),
        typed_of(lathe) | {"revision": "2", "through_bore": "9/16 in"},
    )

    change = changes_of(lathe).first()
    assert change.lines == [["through bore", "1/2\u00a0in", "9/16\u00a0in"]]
    page = as_coordinator.get(lathe.get_absolute_url()).content.decode()
    assert str(as_coordinator.account.person) in page
    assert "Through bore: 1/2\u00a0in, now 9/16\u00a0in" in page


def test_speeds_and_draw_bars_stand_in_the_change_log(as_coordinator, kiln):
    lathe = LatheFactory(workshop=kiln, number=7)

    as_coordinator.post(reverse("lathes:mend", args=[lathe.pk]), typed_of(lathe))

    lines = {name: after for name, _, after in changes_of(lathe).first().lines}
    assert lines["speeds"] == "belt 1: 620; belt 2: 1 000-1 450"
    assert lines["its own draw bars"] == "A: 3/8-16, 14 1/4 in"


def test_two_people_at_one_lathe_do_not_overwrite_each_other(as_coordinator, kiln):
    lathe = LatheFactory(workshop=kiln, number=7, plate="Bench lathe")
    opened_early = typed_of(lathe)
    as_coordinator.post(reverse("lathes:mend", args=[lathe.pk]), opened_early | {"plate": "First"})

    answer = as_coordinator.post(reverse("lathes:mend", args=[lathe.pk]), opened_early | {"plate": "Second"})

    lathe.refresh_from_db()
    assert answer.status_code == 422
    assert "Somebody else changed this" in answer.content.decode()
    assert 'value="Second"' in answer.content.decode()
    assert lathe.plate == "First"


@pytest.mark.parametrize(
    ("field", "typed", "words"),
    [
        ("number", "", "A lathe needs a number"),
        ("number", "0", "from 1 to 999"),
        ("number", "7.5", "from 1 to 999"),
        ("through_bore", "2 3/0 in", "A fraction can&#x27;t have 0 under the line"),
        ("through_bore", "1 1/4 in", "leaves no spindle"),
        ("nose_to_handwheel", "two inches", ""),
        ("nose_to_handwheel", "16", "inches or millimetres"),
        ("swing_over_banjo", "13 in", "more over the banjo than over the bed"),
        ("centres_least", "37 in", "The least distance is more than the greatest"),
        ("centres_least", "0 in", ""),
        ("nose_thread", "33 x 3.5", "metric or inch"),
        ("speeds", "belt 1: 620\nfast", "“fast”"),
        ("draw_bars", "A: 3/8-16", ""),
        ("plate_speed", "fast", ""),
        ("headstock_taper", "MT9", "Write the taper as Morse No. 2"),
        ("reverse", "perhaps", "Write yes or no"),
        ("condition", "limited", "Say in a few words what is wrong"),
        ("condition_reason", "x" * 161, ""),
        ("plate", "<script>alert(1)</script>" * 6, ""),
    ],
)
def test_bad_input_gets_a_sentence_keeps_what_was_typed_and_changes_nothing(
    as_coordinator, kiln, field, typed, words
):
    lathe = LatheFactory(workshop=kiln, number=7, plate="As it was")

    answer = as_coordinator.post(reverse("lathes:mend", args=[lathe.pk]), typed_of(lathe) | {field: typed})

    page = answer.content.decode()
    wrong = "condition_reason" if field == "condition" else field
    lathe.refresh_from_db()
    assert answer.status_code == 422
    assert wrong in answer.context["form"].errors
    assert words in page
    assert answer.context["form"][field].value() == typed
    assert "<script>alert" not in page
    assert (lathe.plate, lathe.revision) == ("As it was", 1)
    assert not Change.objects.exists()


def test_a_number_is_painted_once_in_a_workshop(as_coordinator, kiln):
    LatheFactory(workshop=kiln, number=7)

    answer = as_coordinator.post(reverse("lathes:new"), GOOD | {"workshop": kiln.pk})

    assert "Kiln Room has a lathe 7 already" in answer.content.decode()
    assert Lathe.objects.count() == 1


@pytest.mark.parametrize(
    "hostile",
    [
        "\u202egnitirw",
        "<b>bold</b>",
        "'; drop table club_lathe; --",
        "{{ 7 }}",
        "\U0001f9a8" * 30,
        "%s %(x)s",
    ],
)
def test_hostile_text_comes_back_as_the_text_it_is(as_coordinator, kiln, hostile):
    lathe = LatheFactory(workshop=kiln, number=7)

    as_coordinator.post(reverse("lathes:mend", args=[lathe.pk]), typed_of(lathe) | {"plate": hostile})

    lathe.refresh_from_db()
    assert lathe.plate == hostile
    assert as_coordinator.get(lathe.get_absolute_url()).status_code == 200
    assert as_coordinator.get(reverse("lathes:list"), {"q": hostile}).status_code == 200


def test_a_coordinator_of_one_workshop_mends_no_lathe_of_another(sign_in_as, kiln):
    elsewhere = LatheFactory()
    client = sign_in_as(Role.COORDINATOR, kiln)

    assert client.get(reverse("lathes:mend", args=[elsewhere.pk])).status_code == 404
    assert client.post(reverse("lathes:mend", args=[elsewhere.pk]), typed_of(elsewhere)).status_code == 404
    assert client.post(reverse("lathes:remove", args=[elsewhere.pk]), {"revision": 1}).status_code == 404


def test_a_coordinator_of_one_workshop_moves_no_lathe_into_another(sign_in_as, kiln):
    lathe, other = LatheFactory(workshop=kiln, number=7), WorkshopFactory()
    client = sign_in_as(Role.COORDINATOR, kiln)

    answer = client.post(reverse("lathes:mend", args=[lathe.pk]), typed_of(lathe) | {"workshop": other.pk})

    lathe.refresh_from_db()
    assert answer.status_code == 422
    assert lathe.workshop == kiln


def test_a_coordinator_of_one_workshop_makes_no_new_one(sign_in_as, kiln):
    client = sign_in_as(Role.COORDINATOR, kiln)

    assert client.post(reverse("lathes:workshop_new"), {"name": "Barn", "zone": "UTC"}).status_code == 403


class TestTheFirstSteps:
    def test_the_empty_list_leads_to_a_workshop_too(self, as_coordinator):
        page = as_coordinator.get(reverse("lathes:list")).content.decode()

        assert "add it first" in page
        assert f'href="{reverse("lathes:workshop_new")}"' in page

    def test_a_workshop_without_lathes_leads_to_them(self, as_coordinator):
        page = as_coordinator.get(WorkshopFactory().get_absolute_url()).content.decode()

        assert reverse("lathes:import") in page
        assert reverse("lathes:new") in page

    def test_a_workshop_with_lathes_shows_them(self, as_coordinator):
        workshop = LatheFactory().workshop

        page = as_coordinator.get(workshop.get_absolute_url()).content.decode()

        assert f"?workshop={workshop.pk}" in page
        assert reverse("lathes:import") not in page


class TestCondition:
    def change(self, client, lathe, **typed):
        typed = {
            "condition": "out",
            "condition_reason": "no working drive",
            "revision": lathe.revision,
        } | typed
        return client.post(reverse("lathes:condition", args=[lathe.pk]), typed)

    def test_a_helper_takes_a_lathe_out_with_a_reason(self, sign_in_as):
        lathe = LatheFactory()

        self.change(sign_in_as(Role.HELPER), lathe)

        lathe.refresh_from_db()
        assert (lathe.condition, lathe.condition_reason) == ("out", "no working drive")
        assert changes_of(lathe).first().by_name != ""

    def test_the_answer_says_how_the_lathe_is_now(self, sign_in_as):
        lathe = LatheFactory(number=4)
        client = sign_in_as(Role.HELPER)

        self.change(client, lathe)

        assert "Lathe 4 is now out of service." in client.get(lathe.get_absolute_url()).content.decode()

    def test_without_a_reason_nothing_changes(self, sign_in_as):
        lathe = LatheFactory()

        answer = self.change(sign_in_as(Role.HELPER), lathe, condition_reason=" ")

        lathe.refresh_from_db()
        assert "Say in a few words what is wrong" in answer.content.decode()
        assert lathe.condition == "in_service"

    def test_a_stale_form_changes_nothing(self, sign_in_as):
        lathe = LatheFactory(revision=3)

        answer = self.change(sign_in_as(Role.HELPER), lathe, revision=2)

        lathe.refresh_from_db()
        assert answer.status_code == 422
        assert lathe.condition == "in_service"


class TestRemoving:
    def test_it_asks_first_and_keeps_the_change(self, as_coordinator):
        lathe = LatheFactory(number=8)
        asked = as_coordinator.get(reverse("lathes:remove", args=[lathe.pk])).content.decode()

        as_coordinator.post(reverse("lathes:remove", args=[lathe.pk]), {"revision": 1})

        assert "Take lathe 8 out of the list?" in asked
        assert not Lathe.objects.exists()
        assert Change.objects.get().deed == Change.Deed.GONE

    def test_a_lathe_mended_meanwhile_stays(self, as_coordinator):
        lathe = LatheFactory(revision=2)

        answer = as_coordinator.post(reverse("lathes:remove", args=[lathe.pk]), {"revision": 1})

        assert answer.status_code == 422
        assert Lathe.objects.exists()


class TestTheList:
    def test_the_queries_do_not_grow_with_the_lathes(self, as_coordinator, django_assert_max_num_queries):
        LatheFactory.create_batch(40)

        with django_assert_max_num_queries(12):
            as_coordinator.get(reverse("lathes:list"))

    def test_htmx_gets_only_the_lathes(self, as_coordinator):
        LatheFactory()

        answer = as_coordinator.get(reverse("lathes:list"), headers={"HX-Request": "true"})

        assert "<!doctype" not in answer.content.decode()
        assert "HX-Request" in answer["Vary"]

    def test_it_is_narrowed_by_number_words_workshop_and_condition(self, as_coordinator, kiln):
        one = LatheFactory(workshop=kiln, number=71, plate="Bowl lathe")
        LatheFactory(number=72, condition="out", condition_reason="quill")

        def found(**asked):
            page = as_coordinator.get(reverse("lathes:list"), asked).context["page"]
            return [lathe.number for lathe in page.object_list]

        assert found(q="71") == [71]
        assert found(q="bowl") == [71]
        assert found(q="quill") == [72]
        assert found(workshop=one.workshop_id) == [71]
        assert found(condition="out") == [72]
        assert found(q="nothing like it") == []
        assert len(found(workshop="x", condition="y", page="zz")) == 2

    def test_an_empty_club_is_told_how_to_begin(self, as_coordinator, sign_in_as):
        assert "Bring in a list" in as_coordinator.get(reverse("lathes:list")).content.decode()
        assert (
            "A coordinator brings them in"
            in sign_in_as(Role.HELPER).get(reverse("lathes:list")).content.decode()
        )

    def test_lengths_stand_in_the_readers_units(self, as_coordinator, kiln):
        as_coordinator.post(reverse("lathes:new"), GOOD | {"workshop": kiln.pk})
        as_coordinator.account.lengths = "millimetres"
        as_coordinator.account.save()

        page = as_coordinator.get(reverse("lathes:list")).content.decode()

        assert "304.8\u00a0mm" in page
        assert "12\u00a0in" not in page


def test_a_speed_above_the_plate_is_pointed_out(as_coordinator, kiln):
    as_coordinator.post(reverse("lathes:new"), GOOD | {"workshop": kiln.pk, "plate_speed": "1 400"})

    assert (
        "faster than the plate allows"
        in as_coordinator.get(Lathe.objects.get().get_absolute_url()).content.decode()
    )
