from __future__ import annotations

from typing import Any

from django import forms
from django.contrib.auth import authenticate
from django.http import HttpRequest
from django.utils.translation import gettext_lazy as _

from club.people.models import Account


class SignInForm(forms.Form):
    """Name and password. One sentence for whatever is wrong with them, so that nobody can try out names."""

    username = forms.CharField(
        label=_("Sign-in name"),
        max_length=150,
        widget=forms.TextInput(
            attrs={"autocomplete": "username", "autocapitalize": "none", "spellcheck": "false"}
        ),
    )
    password = forms.CharField(
        label=_("Password"),
        max_length=1000,
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "current-password"}),
    )

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
            raise forms.ValidationError(
                _("This name and this password don't belong together. Mind capitals in the password."),
                code="no_match",
            )
        self.account = account
        return given
