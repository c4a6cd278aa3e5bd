"""One file of settings; every knob comes from the environment (README lists them)."""

from __future__ import annotations

import secrets
from pathlib import Path
from urllib.parse import urlsplit

import dj_database_url
import django_stubs_ext
from csp.constants import NONE, SELF

from club.environment import env_bool, env_int, env_list, env_text

# Lets a form or a field name its type as the type checker reads it: forms.ModelForm[Lathe].
django_stubs_ext.monkeypatch()

BASE_DIR = Path(__file__).resolve().parent.parent
DATA_DIR = Path(env_text("HANDWHEEL_DATA", str(BASE_DIR / ".data")))
# Names, password hashes and sessions: nobody else on this machine needs to read them.
DATA_DIR.mkdir(mode=0o700, parents=True, exist_ok=True)

# Where people reach this installation, as in https://turners.example. QR codes carry it.
ADDRESS = env_text("HANDWHEEL_ADDRESS", "").rstrip("/")
HTTPS = ADDRESS.startswith("https://")

DEBUG = env_bool("HANDWHEEL_DEBUG", False)


def _secret_key() -> str:
    """The key from the environment, else one made once and kept beside the data."""
    given = env_text("HANDWHEEL_SECRET_KEY", "")
    if given:
        return given
    path = DATA_DIR / "secret-key"
    if not path.exists():
        path.touch(mode=0o600)
        path.write_text(secrets.token_urlsafe(50), encoding="ascii")
    return path.read_text(encoding="ascii")


SECRET_KEY = _secret_key()
ALLOWED_HOSTS = env_list(
    "HANDWHEEL_HOSTS", ",".join(filter(None, ["localhost,127.0.0.1,[::1]", urlsplit(ADDRESS).hostname]))
)

INSTALLED_APPS = [
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "whitenoise.runserver_nostatic",
    "django.contrib.staticfiles",
    "django.forms",
    "axes",
    "csp",
    "django_htmx",
    "club",
    "projects",
]

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "csp.middleware.CSPMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "club.base.requests.Utf8Middleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "club.base.access.AccessTableMiddleware",
    # Last, so that it sees the answer of the sign-in view.
    "axes.middleware.AxesMiddleware",
]

ROOT_URLCONF = "club.urls"
WSGI_APPLICATION = "club.wsgi.application"

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "DIRS": [BASE_DIR / "templates"],
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
                "club.base.pages.page_context",
            ],
            "builtins": [
                "django.templatetags.i18n",
                "club.templatetags.access",
                "club.templatetags.marks",
                "club.templatetags.quantities",
            ],
        },
    }
]
# Our own field templates stand in templates/, so forms look there too.
FORM_RENDERER = "club.base.pages.FormRenderer"

DATABASES = {
    "default": dj_database_url.config(
        default=f"sqlite:///{DATA_DIR / 'handwheel.sqlite3'}", conn_max_age=60, conn_health_checks=True
    )
}
if DATABASES["default"]["ENGINE"] == "django.db.backends.sqlite3":
    DATABASES["default"] |= {
        "OPTIONS": {
            "transaction_mode": "IMMEDIATE",
            "timeout": 20,
            # FULL: what was answered "saved" survives a power cut.
            "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;",
        },
        # A file, because races can't be tested on a shared in-memory database.
        "TEST": {"NAME": DATA_DIR / "test.sqlite3"},
    }
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

AUTH_USER_MODEL = "club.Account"
AUTHENTICATION_BACKENDS = ["axes.backends.AxesStandaloneBackend", "django.contrib.auth.backends.ModelBackend"]
PASSWORD_HASHERS = ["django.contrib.auth.hashers.Argon2PasswordHasher"]
AUTH_PASSWORD_VALIDATORS = [
    {
        "NAME": "django.contrib.auth.password_validation.UserAttributeSimilarityValidator",
        "OPTIONS": {"user_attributes": ("name",)},
    },
    {"NAME": "django.contrib.auth.password_validation.MinimumLengthValidator", "OPTIONS": {"min_length": 10}},
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
]
LOGIN_URL = "people:sign_in"
LOGIN_REDIRECT_URL = "home:start"
LOGOUT_REDIRECT_URL = "people:sign_in"

# Five wrong passwords for one name from one place: wait a quarter of an hour.
AXES_FAILURE_LIMIT = 5
AXES_COOLOFF_TIME = 0.25
AXES_LOCKOUT_PARAMETERS = [["username", "ip_address"]]
AXES_RESET_ON_SUCCESS = True
AXES_LOCKOUT_CALLABLE = "club.people.views.signing_in.locked_out"
AXES_USERNAME_FORM_FIELD = "username"
AXES_USERNAME_CALLABLE = "club.people.throttle.name_tried"
# Tries while waiting don't lengthen the wait, or the time the page names would be untrue.
AXES_RESET_COOL_OFF_ON_FAILURE_DURING_LOCKOUT = False
# Who signed in when, from where and with what is nobody's business.
AXES_DISABLE_ACCESS_LOG = True
AXES_VERBOSE = False
AXES_CLIENT_IP_CALLABLE = "club.people.throttle.address_of"

# Django's own choice keeps a fault in no place at all where DEBUG is off and nobody gets mail.
LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"stderr": {"class": "logging.StreamHandler"}},
    "loggers": {"django": {"handlers": ["stderr"], "level": "ERROR"}},
}

LANGUAGE_CODE = "en"
LANGUAGES = [("en", "English")]
USE_I18N = True
USE_TZ = True
TIME_ZONE = env_text("HANDWHEEL_TIME_ZONE", "UTC")
# One currency for the installation: its ISO 4217 code and how many minor units make one.
CURRENCY = env_text("HANDWHEEL_CURRENCY", "EUR")
# Whether the prices the stores keep have their tax in them, as a club pays them that gets none back.
PRICES_WITH_TAX = env_bool("HANDWHEEL_PRICES_WITH_TAX", True)

CLUB_NAME = env_text("HANDWHEEL_CLUB", "Handwheel")

STATIC_URL = "/static/"
STATIC_ROOT = DATA_DIR / "static"
STATIC_ROOT.mkdir(exist_ok=True)
STATICFILES_DIRS = [BASE_DIR / "static"]
# Without collected files whitenoise serves straight from static/: one step less for a small club.
WHITENOISE_USE_FINDERS = True

MESSAGE_STORAGE = "django.contrib.messages.storage.session.SessionStorage"
DATA_UPLOAD_MAX_MEMORY_SIZE = 2_500_000

CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": [NONE],
        "script-src": [SELF],
        "style-src": [SELF],
        "img-src": [SELF],
        "font-src": [SELF],
        "connect-src": [SELF],
        "form-action": [SELF],
        "base-uri": [NONE],
        "frame-ancestors": [NONE],
    }
}
SECURE_REFERRER_POLICY = "same-origin"
# Behind how many proxies of our own it runs: only they may say where a request came from, and how.
PROXIES = env_int("HANDWHEEL_PROXIES", 0)
SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https") if PROXIES else None
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = SECURE_SSL_REDIRECT = HTTPS
SECURE_HSTS_SECONDS = 31_536_000 if HTTPS else 0
CSRF_TRUSTED_ORIGINS = [ADDRESS] if HTTPS else []
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SAMESITE = "Lax"
