from __future__ import annotations

from typing import Any

from django import forms
from django.contrib.auth import authenticate
from django.contrib.auth.password_validation import validate_password
from django.core.exceptions import ValidationError
from django.db.models import QuerySet
from django.http import HttpRequest
from django.utils.translation import gettext_lazy as _

from club.lathes.models import Workshop
from club.people import sentences
from club.people.models import Account, Person, RoleGrant

LONGEST_PASSWORD = 1000
ONE_WORD = {"autocapitalize": "none", "spellcheck": "false"}


class PasswordField(forms.CharField):
    """A password as it was typed, blanks and all; never shown again."""

    def __init__(self, label: Any, autocomplete: str, **kwargs: Any) -> None:
        widget = forms.PasswordInput(attrs={"autocomplete": autocomplete})
        said = {"required": sentences.PASSWORD_NEEDED, "max_length": sentences.TOO_LONG}
        super().__init__(
            label=label,
            strip=False,
            max_length=LONGEST_PASSWORD,
            widget=widget,
            error_messages=said,
            **kwargs,
        )


class SignInForm(forms.Form):
    """Name and password. One sentence for whatever is wrong with them, so that nobody can try out names."""

    username = forms.CharField(
        label=_("sign-in name"),
        max_length=150,
        error_messages={"required": sentences.SIGN_IN_NAME_NEEDED, "max_length": sentences.TOO_LONG},
        widget=forms.TextInput(attrs={"autocomplete": "username", **ONE_WORD}),
    )
    password = PasswordField(_("password"), "current-password")

    account: Account | None = None

    def __init__(self, request: HttpRequest, data: Any = None) -> None:
        super().__init__(data)
        self.request = request

    def clean(self) -> dict[str, Any]:
        given = self.cleaned_data
        if self.errors:
            return given
        account = authenticate(self.request, username=given["username"], password=given["password"])
        if not isinstance(account, Account):
            raise ValidationError(sentences.NO_MATCH, code="no_match")
        self.account = account
        return given


class PersonForm(forms.ModelForm[Person]):
    revision = forms.IntegerField(required=False, widget=forms.HiddenInput)

    class Meta:
        model = Person
        fields = ("name", "email", "phone", "age_band")
        widgets = {"age_band": forms.RadioSelect}
        error_messages = {
            "name": {"required": sentences.PERSON_NEEDED, "max_length": sentences.TOO_LONG},
            "email": {"invalid": sentences.EMAIL_FORM, "max_length": sentences.TOO_LONG},
            "phone": {"max_length": sentences.TOO_LONG},
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["revision"].initial = self.instance.revision


class RoleForm(forms.Form):
    """A role for a person, in the workshops that whoever gives it has to give."""

    role = forms.ChoiceField(
        label=_("role"),
        choices=RoleGrant.ROLES,
        widget=forms.RadioSelect,
        error_messages={"required": sentences.ROLE_NEEDED, "invalid_choice": sentences.ROLE_NEEDED},
    )
    workshop = forms.ModelChoiceField(
        Workshop.objects.none(),
        label=_("where"),
        required=False,
        empty_label=_("every workshop"),
        error_messages={"required": sentences.WORKSHOP_NEEDED, "invalid_choice": sentences.WORKSHOP_NEEDED},
    )

    def __init__(self, data: Any, workshops: QuerySet[Workshop], everywhere: bool) -> None:
        super().__init__(data)
        where = self.fields["workshop"]
        assert isinstance(where, forms.ModelChoiceField)
        where.queryset = workshops
        where.required = not everywhere
        if not everywhere:
            where.empty_label = None


class SignInNameForm(forms.ModelForm[Account]):
    """The name a person will sign in with."""

    class Meta:
        model = Account
        fields = ("name",)
        widgets = {"name": forms.TextInput(attrs={"autocomplete": "off", **ONE_WORD})}
        error_messages = {
            "name": {"required": sentences.SIGN_IN_NAME_NEEDED, "max_length": sentences.TOO_LONG}
        }


class LengthsForm(forms.ModelForm[Account]):
    class Meta:
        model = Account
        fields = ("lengths",)
        widgets = {"lengths": forms.RadioSelect}


class OwnPasswordForm(forms.Form):
    """A new password for whoever knows the old one."""

    current = PasswordField(_("password now"), "current-password")
    new = PasswordField(
        _("new password"), "new-password", help_text=_("At least 10 characters. A few words do well.")
    )
    again = PasswordField(_("new password again"), "new-password")

    def __init__(self, account: Account, data: Any = None) -> None:
        super().__init__(data)
        self.account = account

    def clean_current(self) -> str:
        current: str = self.cleaned_data["current"]
        if not self.account.check_password(current):
            raise ValidationError(sentences.WRONG_PASSWORD, code="wrong")
        return current

    def clean_new(self) -> str:
        new: str = self.cleaned_data["new"]
        validate_password(new, self.account)
        if new == self.cleaned_data.get("current"):
            raise ValidationError(sentences.NOT_NEW, code="not_new")
        return new

    def clean_again(self) -> str:
        again: str = self.cleaned_data["again"]
        if "new" in self.cleaned_data and again != self.cleaned_data["new"]:
            raise ValidationError(sentences.NOT_TWICE, code="not_twice")
        return again
