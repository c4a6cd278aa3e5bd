"""The model field, on a model of its own that only these tests know."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, ClassVar

import pytest
from django.core import serializers
from django.core.exceptions import ValidationError
from django.db import IntegrityError, connection, models, transaction
from django.db.migrations.state import ModelState, ProjectState
from django.db.models import F, Max, Q
from django.forms import ModelForm, modelform_factory
from django.test.utils import isolate_apps

from club.base.fields import LengthField, LengthFormField
from club.base.quantities.length import LONGEST, Length, parse_length
from club.lathes.models import Lathe

pytestmark = pytest.mark.django_db

with isolate_apps("club"):

    class Measured(models.Model):
        width = LengthField("width", null=True, blank=True)

        class Meta:
            abstract = True
            app_label = "club"

    class Rod(Measured):
        length = LengthField("length", help_text="Without the head.")
        bore = LengthField("bore", null=True, blank=True, zero=True)

        objects: ClassVar[models.Manager[Rod]] = models.Manager()

        class Meta:
            app_label = "club"
            constraints = (
                models.CheckConstraint(condition=Q(bore__lte=F("length")), name="rod_bore_not_above_length"),
            )

        def __str__(self) -> str:
            return "rod"


@pytest.fixture(scope="module", autouse=True)
def _rods(django_db_setup: None, django_db_blocker) -> Iterator[None]:
    with django_db_blocker.unblock():
        with connection.schema_editor() as editor:
            editor.create_model(Rod)
        yield
        with connection.schema_editor() as editor:
            editor.delete_model(Rod)


@pytest.fixture
def rod() -> Rod:
    return Rod.objects.create(length=parse_length("14 7/16 in"), bore=parse_length("10 mm"))


def kept(rod: Rod) -> Rod:
    return Rod.objects.get(pk=rod.pk)


def columns_of(rod: Rod, name: str) -> tuple[int | None, str]:
    """What stands in the database itself."""
    with connection.cursor() as cursor:
        cursor.execute(f"SELECT {name}, {name}_typed FROM {Rod._meta.db_table} WHERE id = %s", [rod.pk])
        nm, typed = cursor.fetchone()
    return nm, typed


def test_a_length_is_kept_as_nanometres_and_as_typed(rod):
    # 14 7/16 in = 231/16 x 25.4 mm.
    assert columns_of(rod, "length") == (366_712_500, "14 7/16 in")
    assert kept(rod).length == Length(366_712_500)
    assert kept(rod).length.typed == "14 7/16 in"


def test_a_length_nobody_knows_is_none(rod):
    assert columns_of(rod, "width") == (None, "")
    assert kept(rod).width is None


def test_columns_are_a_bigint_and_a_text_that_forms_leave_alone():
    names = {field.name: field for field in Rod._meta.get_fields()}

    assert names["length"].get_internal_type() == "BigIntegerField"
    assert names["length_typed"].get_internal_type() == "CharField"
    assert names["width_typed"].model is Rod
    assert not names["length_typed"].editable
    assert len(Rod._meta.concrete_fields) == len(names) == 7


def test_a_length_can_be_given_as_set_or_taken_away(rod):
    rod.length = parse_length("400 mm")
    rod.bore = None
    rod.save()

    assert columns_of(rod, "length") == (400_000_000, "400 mm")
    assert columns_of(rod, "bore") == (None, "")


def test_saving_one_named_field_writes_its_text_and_no_other(rod):
    rod.length = parse_length("400 mm")
    rod.bore = parse_length("3/8 in")
    rod.save(update_fields=("length",))

    assert columns_of(rod, "length") == (400_000_000, "400 mm")
    assert columns_of(rod, "bore") == (10_000_000, "10 mm")


def test_a_worked_out_length_wipes_the_old_text(rod):
    rod.length = Length(12_345_678)
    rod.save(update_fields=("length",))

    assert columns_of(rod, "length") == (12_345_678, "")
    assert str(kept(rod).length) == "about 12.346\u00a0mm"


def test_bare_nanometres_wipe_the_old_text_too(rod):
    rod.length = 50_000_000
    rod.save()

    assert columns_of(rod, "length") == (50_000_000, "")
    assert rod.length == Length(50_000_000)


def test_a_bulk_update_never_leaves_an_old_text_standing_for_a_new_length(rod):
    Rod.objects.update(length=parse_length("15 in"))

    assert kept(rod).length == parse_length("15 in")
    assert kept(rod).length.typed == ""


def test_a_bulk_update_that_names_both_columns_keeps_the_text(rod):
    new = parse_length("15 in")
    Rod.objects.update(length=new, length_typed=new.typed)

    assert kept(rod).length.typed == "15 in"


def test_many_made_at_once_keep_their_texts():
    Rod.objects.bulk_create([Rod(length=parse_length("1 in")), Rod(length=parse_length("2 cm"))])

    assert sorted(rod.length.typed for rod in Rod.objects.all()) == ["1 in", "2 cm"]


def test_filters_and_order_go_by_nanometres(rod):
    short = Rod.objects.create(length=parse_length("9 in"))
    inch = parse_length("1 in")

    assert list(Rod.objects.order_by("length")) == [short, rod]
    assert list(Rod.objects.filter(length__gt=parse_length("10 in"))) == [rod]
    assert Rod.objects.get(length=parse_length("228.6 mm")) == short
    assert Rod.objects.get(length__in=[parse_length("0.75 ft")]) == short
    assert Rod.objects.get(length__range=(inch, parse_length("300 mm"))) == short
    assert Rod.objects.get(bore__isnull=True) == short
    assert Rod.objects.get(bore__lt=F("length") - 1) == rod


def test_values_and_aggregates_are_whole_nanometres(rod):
    assert Rod.objects.aggregate(longest=Max("length")) == {"longest": 366_712_500}
    assert Rod.objects.values_list("length", "length_typed").get() == (366_712_500, "14 7/16 in")


def test_what_was_left_in_the_database_is_fetched_in_one_query(rod, django_assert_num_queries):
    with django_assert_num_queries(2):
        assert Rod.objects.only("bore", "bore_typed").get().length.typed == "14 7/16 in"
    with django_assert_num_queries(2):
        assert Rod.objects.only("length").get().length.typed == "14 7/16 in"
    with django_assert_num_queries(1):
        assert Rod.objects.get().length.typed == "14 7/16 in"


def test_a_row_fetched_in_part_saves_only_that_part(rod):
    part = Rod.objects.only("bore").get()
    part.bore = parse_length("3/8 in")
    part.save()

    assert columns_of(rod, "bore") == (9_525_000, "3/8 in")
    assert columns_of(rod, "length") == (366_712_500, "14 7/16 in")


@pytest.mark.parametrize("fields", [None, ["length"], ["length", "length_typed"]])
def test_what_somebody_else_wrote_is_fetched_anew(rod, fields):
    other = kept(rod)
    other.length = parse_length("400 mm")
    other.save()

    rod.refresh_from_db(fields=fields)

    assert (rod.length, rod.length.typed) == (Length(400_000_000), "400 mm")


def test_somebody_elses_empty_length_is_fetched_anew(rod):
    Rod.objects.update(bore=None, bore_typed="")

    rod.refresh_from_db()

    assert rod.bore is None
    assert rod.bore_typed == ""


def test_an_expression_is_worked_out_by_the_database(rod):
    rod.length = F("length") + 1
    rod.save(update_fields=("length",))

    assert kept(rod).length == Length(366_712_501)


@pytest.mark.parametrize(
    ("field", "length", "words"),
    [
        ("length", None, "This field cannot be null."),
        ("length", Length(0), "This can't be 0."),
        ("length", Length(-1), "This can't be below 0."),
        ("bore", Length(-1), "This can't be below 0."),
        ("length", Length(LONGEST + 1), "This can't be more than 100\u00a0m."),
        ("length", "two inches", "There is no number in digits here."),
    ],
)
def test_cleaning_refuses_what_is_no_length_of_this_field(rod, field, length, words):
    setattr(rod, field, length)

    with pytest.raises(ValidationError) as refused:
        rod.full_clean()

    assert words in refused.value.message_dict[field][0]


def test_cleaning_lets_be_what_fits_and_reads_text(rod):
    rod.bore = Length(0)
    rod.length = "15 1/2 in"
    rod.full_clean()

    assert rod.length == parse_length("15.5 in")
    assert rod.length.typed == "15 1/2 in"


def test_a_constraint_holds_when_cleaning_and_in_the_database(rod):
    rod.bore = parse_length("20 in")

    with pytest.raises(ValidationError, match="rod_bore_not_above_length"):
        rod.full_clean()
    with pytest.raises(IntegrityError), transaction.atomic():
        rod.save()


@pytest.mark.parametrize("form", ["json", "xml", "python"])
def test_a_fixture_brings_back_what_went_out(form):
    # A model of the app itself, since fixtures are read by its registry.
    lathe = Lathe(pk=5, workshop_id=1, number=5, through_bore=parse_length("9/16 in"))

    (read,) = serializers.deserialize(form, serializers.serialize(form, [lathe]))

    back: Any = read.object
    assert (back.through_bore, back.through_bore.typed) == (lathe.through_bore, "9/16 in")
    assert back.swing_over_bed is None


def test_a_deconstructed_field_is_the_same_field_again():
    for field in (Rod._meta.get_field("length"), Rod._meta.get_field("bore")):
        assert field.deconstruct()[1] == "club.base.fields.LengthField"
        assert field.clone().deconstruct()[1:] == field.deconstruct()[1:]
    assert Rod._meta.get_field("bore").deconstruct()[3]["zero"] is True
    assert "zero" not in Rod._meta.get_field("length").deconstruct()[3]


def test_a_migration_sees_two_plain_columns(rod):
    state = ProjectState()
    state.add_model(ModelState.from_model(Rod))

    past = state.apps.get_model("club", "Rod").objects.get(pk=rod.pk)

    assert (past.length, past.length_typed) == (366_712_500, "14 7/16 in")
    assert [field.name for field in past._meta.fields].count("length_typed") == 1


@pytest.fixture
def rod_form() -> type[ModelForm[Rod]]:
    return modelform_factory(Rod, fields=("length", "bore", "width"))


def test_a_form_starts_with_the_text_as_typed(rod, rod_form):
    form = rod_form(instance=rod)

    assert isinstance(form.fields["length"], LengthFormField)
    assert form["length"].value() == "14 7/16 in"
    assert form["length"].label == "Length"
    assert form["length"].help_text == "Without the head."
    assert form["width"].value() is None
    assert 'value="14 7/16 in"' in str(form["length"])


def test_a_form_saves_lengths_with_their_texts(rod, rod_form):
    form = rod_form({"length": " 15 1/2 in ", "bore": "0 mm", "width": ""}, instance=rod)

    form.save()

    assert columns_of(rod, "length") == (393_700_000, "15 1/2 in")
    assert columns_of(rod, "bore") == (0, "0 mm")
    assert kept(rod).width is None
    assert form.changed_data == ["length", "bore"]


def test_a_form_keeps_what_was_typed_when_it_is_wrong(rod, rod_form):
    form = rod_form({"length": "2 3/0 in", "bore": "2 l", "width": "0 mm"}, instance=rod)

    assert set(form.errors) == {"length", "bore", "width"}
    assert form["length"].value() == "2 3/0 in"
    assert columns_of(rod, "length") == (366_712_500, "14 7/16 in")


def test_a_constraint_reaches_the_form(rod, rod_form):
    form = rod_form({"length": "1 in", "bore": "2 in", "width": ""}, instance=rod)

    assert not form.is_valid()
