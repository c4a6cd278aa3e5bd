"""Every sentence this room says when it refuses something."""

from __future__ import annotations

from django.utils.translation import gettext_lazy as _

PERSON_NEEDED = _("Write the person's name, as it should stand on a kit bag.")
TOO_LONG = _("Use at most %(limit_value)d characters.")
EMAIL_FORM = _("Write the e-mail as name@place.example, or leave it empty.")
SIGN_IN_NAME_NEEDED = _("Write the name to sign in with.")
PASSWORD_NEEDED = _("Type the password.")
ROLE_NEEDED = _("Choose one of the roles.")
NO_MATCH = _("This name and this password don't belong together. Mind capitals in the password.")
WRONG_PASSWORD = _("This is not the password you signed in with.")
NOT_TWICE = _("The two new passwords differ. Type the same one in both.")
NOT_NEW = _("This is the password you have now. Choose another one.")
NAME_TAKEN = _("Somebody signs in with that name already. Choose another.")
NAME_LETTERS = _("Use letters, digits and . - _ @ + only, without blanks.")
ROLE_HELD = _("%(person)s has this role there already.")
WORKSHOP_NEEDED = _("Choose a workshop: your own role doesn't reach further.")
STALE = _("Somebody else mended this person since you opened the page. Open it again and mend what is left.")
LAST_KEY = _(
    "%(person)s is the last coordinator of every workshop who can sign in. Make somebody else one first."
)
