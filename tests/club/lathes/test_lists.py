from __future__ import annotations

from pathlib import Path

import pytest
from django.urls import reverse

from club.base.models import Change
from club.base.writing import TakenError
from club.lathes.lists import bring_in, plan_list, write_lathes
from club.lathes.models import Lathe
from tests.factories import AccountFactory, LatheFactory, WorkshopFactory

pytestmark = pytest.mark.django_db
FORTY = Path(__file__).with_name("forty_lathes.csv").read_bytes().decode()

# One mistake to a line, and the words its sentence must have.
MISTAKES = (
    ("Kiln Room,2,2 3/0 in,,,,,", "through bore reads “2 3/0 in”. A fraction can't have 0 under the line"),
    ("Kiln Room,3,twelve,,,,,", "through bore reads “twelve”. "),
    ("Kiln Room,4,12,,,,,", "through bore: “12” could be"),
    ("Kiln Room,5,2 l,,,,,", "through bore reads “2 l”. "),
    ("Barn,6,1/2 in,,,,,", "workshop: There is none called “Barn”"),
    (",7,1/2 in,,,,,", "workshop: Say which one"),
    ("Kiln Room,seven,1/2 in,,,,,", "number reads “seven”. Write the number as a whole one"),
    ("Kiln Room,,1/2 in,,,,,", "number: A lathe needs a number"),
    (
        "Kiln Room,9,1/2 in,Morse No. 9,,,,",
        "headstock taper reads “Morse No. 9”. Write the taper as Morse No. 2",
    ),
    ("Kiln Room,10,1/2 in,,33 x 3.5,,,", "nose thread reads “33 x 3.5”. "),
    ("Kiln Room,11,1/2 in,,,belt 1: fast,,", "speeds:"),
    ("Kiln Room,12,1/2 in,,,,broken,", "condition reads “broken”. Write the condition as in service"),
    ("Kiln Room,13,1/2 in,,,,limited,", "reason: Say in a few words what is wrong"),
    ("Kiln Room,1,1/2 in,,,,,", "lathe 1 stands in line 2 already"),
)
HEAD = "workshop,number,through bore,headstock taper,nose thread,speeds,condition,reason\n"


@pytest.fixture
def account():
    return AccountFactory()


@pytest.fixture
def kiln():
    return WorkshopFactory(name="Kiln Room")


def plan_in(text, *names):
    return plan_list(text, [WorkshopFactory(name=name) for name in names])


def test_forty_lathes_of_mixed_units_come_out_as_they_went_in(account):
    plan = plan_in(FORTY, "Fulling Room", "Tannery", "Étage 2")

    bring_in(account, plan)

    assert plan.all_problems == ()
    assert Lathe.objects.count() == 40
    assert write_lathes(Lathe.objects.whole()) == FORTY


def test_a_list_that_came_out_changes_nothing_when_it_comes_in_again(account):
    bring_in(account, plan_in(FORTY, "Fulling Room", "Tannery", "Étage 2"))
    written = Change.objects.count()
    workshops = [lathe.workshop for lathe in Lathe.objects.whole()]

    plan = plan_list(
        write_lathes(Lathe.objects.whole()), list({room.pk: room for room in workshops}.values())
    )
    bring_in(account, plan)

    assert {line.kind for line in plan.lines} == {"same"}
    assert Change.objects.count() == written


def test_columns_may_stand_in_any_order_behind_semicolons(account, kiln):
    bring_in(account, plan_list("Number;Through Bore;WORKSHOP\n7;1/2 in;kiln room\n", [kiln]))

    assert Lathe.objects.get().through_bore.typed == "1/2 in"


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("Morse No. 2", "MT2"),
        ("morse 3", "MT3"),
        ("2MT", "MT2"),
        ("MK 2", "MT2"),
        ("mt1", "MT1"),
        ("none", "none"),
    ],
)
def test_a_taper_may_be_written_in_several_ways(account, kiln, typed, kept):
    bring_in(account, plan_list(f"workshop,number,headstock taper\nKiln Room,1,{typed}\n", [kiln]))

    assert Lathe.objects.get().headstock_taper == kept


def test_each_kind_of_mistake_gets_its_sentence_and_nothing_is_written(account, kiln):
    text = HEAD + "Kiln Room,1,1/2 in,,,,,\n" + "".join(f"{line}\n" for line, _ in MISTAKES)

    plan = plan_list(text, [kiln])

    assert len(plan.all_problems) == len(MISTAKES) >= 12
    for number, (problem, (_, words)) in enumerate(zip(plan.all_problems, MISTAKES, strict=True), start=3):
        assert problem.startswith(f"Line {number}")
        assert words in problem
    assert not plan.is_good
    assert Lathe.objects.count() == 0


def test_a_number_that_is_there_already_mends_that_lathe(account, kiln):
    lathe = LatheFactory(workshop=kiln, number=4, plate="Bench lathe")

    plan = plan_list("workshop,number,maker's plate\nKiln Room,4,Bowl lathe\n", [kiln])
    bring_in(account, plan)

    assert [(change.heading, change.before, change.after) for change in plan.lines[0].changes] == [
        ("maker's plate", "Bench lathe", "Bowl lathe")
    ]
    lathe.refresh_from_db()
    assert lathe.plate == "Bowl lathe"
    assert lathe.revision == 2


def test_a_column_left_out_stays_as_it_was_and_an_empty_cell_clears(account, kiln):
    bring_in(account, plan_list(HEAD + "Kiln Room,4,1/2 in,Morse No. 2,1-8,belt 1: 620,,\n", [kiln]))

    bring_in(account, plan_list("workshop,number,through bore\nKiln Room,4,\n", [kiln]))

    lathe = Lathe.objects.get()
    assert lathe.through_bore is None
    assert (lathe.headstock_taper, lathe.nose_thread) == ("MT2", "1-8")
    assert lathe.speeds[0].low == 620


def test_all_lines_come_in_or_none(account, kiln):
    plan = plan_list("workshop,number\nKiln Room,1\nKiln Room,2\n", [kiln])
    LatheFactory(workshop=kiln, number=2)

    with pytest.raises(TakenError):
        bring_in(account, plan)

    assert [lathe.number for lathe in Lathe.objects.all()] == [2]


def test_a_plan_takes_the_same_queries_for_one_line_as_for_forty(kiln, django_assert_max_num_queries):
    lines = "".join(f"Kiln Room,{number},1/2 in,Morse No. 2,1-8,belt 1: 620,,\n" for number in range(1, 41))

    with django_assert_max_num_queries(6):
        plan = plan_list(HEAD + lines, [kiln])

    assert plan.new_count == 40


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "There is no line in it"),
        ("workshop,number\n", "Only the line with the columns"),
        ("number,swing\n1,2\n", "No column is called “swing”"),
        ("number\n1\n", "The column “workshop” is missing"),
        ("workshop,number\n<script>alert(1)</script>,1\n", "none called “<script>"),
        ("workshop,number\nKiln Room,99999999999999999999\n", "Write the number"),
        ("workshop,number\nKiln Room,\u0661\n", "Write the number"),
        ("workshop,number\nKiln Room,1" + "\u202e" * 50 + "\n", "Write the number"),
    ],
)
def test_what_is_no_list_of_lathes_says_why(kiln, text, words):
    plan = plan_list(text, [kiln])

    assert any(words in problem for problem in plan.all_problems)
    assert not plan.is_good


@pytest.mark.parametrize("heading", ["through bore (mm)", "Through Bore [mm]"])
def test_a_unit_in_the_heading_counts_for_the_bare_numbers_below_it(account, kiln, heading):
    text = f"workshop,number,{heading}\nKiln Room,1,12.7\nKiln Room,2,3/8 in\nKiln Room,3,\n"

    bring_in(account, plan_list(text, [kiln]))

    bores = [lathe.through_bore for lathe in Lathe.objects.all()]
    assert [bore.typed if bore else "" for bore in bores] == ["12.7 mm", "3/8 in", ""]


def test_one_column_in_two_units_is_refused(kiln):
    plan = plan_list("workshop,number,through bore (mm),through bore (in)\nKiln Room,1,12,1/2\n", [kiln])

    assert "through bore” is there twice" in plan.all_problems[0]


@pytest.mark.parametrize("cell", ["01. Aug", "8-Jan", "Aug 01", "2026-08-01", "01.08.2026"])
def test_a_thread_that_a_spreadsheet_made_a_date_of_is_named_as_one(kiln, cell):
    plan = plan_list(f"workshop,number,nose thread\nKiln Room,1,{cell}\n", [kiln])

    assert "A spreadsheet has made a date of this thread" in plan.all_problems[0]


def test_threads_go_out_so_that_a_spreadsheet_leaves_them_alone(account, kiln):
    bring_in(account, plan_list("workshop,number,nose thread\nKiln Room,1,1-8\n", [kiln]))

    written = write_lathes(Lathe.objects.whole())

    assert ",'1-8," in written
    assert plan_list(written, [kiln]).same_count == 1


def test_the_preview_shows_what_was_read_for_a_new_lathe(kiln):
    plan = plan_list("workshop,number,through bore\nKiln Room,1,1.25 mm\n", [kiln])

    assert ("through bore", "", "1.25 mm") in [
        (change.heading, change.before, change.after) for change in plan.lines[0].changes
    ]


class TestThePage:
    address = property(lambda self: reverse("lathes:import"))

    def test_looking_over_writes_nothing_and_bringing_in_writes_all(self, as_coordinator, kiln):
        lines = "workshop,number\nKiln Room,1\nKiln Room,2\n"

        looked = as_coordinator.post(self.address, {"lines": lines})
        before = Lathe.objects.count()
        done = as_coordinator.post(self.address, {"lines": lines, "looked_over": looked.context["plan"].mark})

        assert (looked.status_code, before) == (200, 0)
        assert done.status_code == 302
        assert Lathe.objects.count() == 2

    def test_what_was_not_looked_over_is_not_brought_in(self, as_coordinator, kiln):
        looked = as_coordinator.post(self.address, {"lines": "workshop,number\nKiln Room,1\n"})

        sneaked = as_coordinator.post(
            self.address,
            {"lines": "workshop,number\nKiln Room,2\n", "looked_over": looked.context["plan"].mark},
        )

        assert "Look it over again" in sneaked.content.decode()
        assert Lathe.objects.count() == 0

    def test_a_lathe_mended_meanwhile_is_not_overwritten(self, as_coordinator, kiln):
        lathe = LatheFactory(workshop=kiln, number=1, plate="Bench lathe")
        lines = "workshop,number,maker's plate\nKiln Room,1,Bowl lathe\n"
        looked = as_coordinator.post(self.address, {"lines": lines})
        Lathe.objects.filter(pk=lathe.pk).update(plate="Mended meanwhile", revision=2)

        as_coordinator.post(self.address, {"lines": lines, "looked_over": looked.context["plan"].mark})

        lathe.refresh_from_db()
        assert lathe.plate == "Mended meanwhile"

    def test_a_wrong_list_keeps_its_lines_on_the_page(self, as_coordinator, kiln):
        answer = as_coordinator.post(self.address, {"lines": 'workshop,number\n"</textarea><b>",1\n'})

        assert answer.status_code == 422
        assert "&lt;/textarea&gt;&lt;b&gt;" in answer.content.decode()
        assert "</textarea><b>" not in answer.content.decode()

    def test_a_file_takes_the_place_of_the_lines_and_stands_there_to_be_mended(self, as_coordinator, kiln):
        from django.core.files.uploadedfile import SimpleUploadedFile

        upload = SimpleUploadedFile("l.csv", "workshop;number\nKiln Room;1\n".encode("utf-16"))

        answer = as_coordinator.post(self.address, {"file": upload, "lines": "nonsense"})

        assert answer.context["plan"].new_count == 1
        assert "Kiln Room;1" in answer.content.decode()
        assert "nonsense" not in answer.content.decode()

    def test_the_list_taken_away_is_the_list_that_came_in(self, as_coordinator, account):
        bring_in(account, plan_in(FORTY, "Fulling Room", "Tannery", "Étage 2"))

        answer = as_coordinator.get(reverse("lathes:export"))

        assert answer.content.decode("utf-8-sig") == FORTY
        assert "attachment" in answer["Content-Disposition"]
