"""Settings: read once from the environment, strictly, with safe defaults.

The README's settings table lists every variable read here.
"""

import os
from pathlib import Path

import environ
from csp.constants import NONE, SELF
from django.core.exceptions import ImproperlyConfigured
from django.core.management.utils import get_random_secret_key

BASE_DIR = Path(__file__).resolve().parent.parent
env = environ.Env()

VAR_DIR = Path(env.str("LOFTBOOK_VAR", default=str(BASE_DIR / "var"))).resolve()
VAR_DIR.mkdir(parents=True, exist_ok=True)


def _boolean(name: str, default: bool) -> bool:
    written = os.environ.get(name, "")
    if written.lower() not in {"", "yes", "no", "true", "false", "1", "0", "on", "off"}:
        raise ImproperlyConfigured(f"{name} is “{written}”. Write yes or no.")
    return env.bool(name, default=default) if written else default


def _kept_secret_key(path: Path) -> str:
    """Give this installation's own key, made on first use and readable by its owner only."""
    if not path.exists():
        fresh = path.with_suffix(f".{os.getpid()}")
        fresh.touch(mode=0o600)
        fresh.write_text(get_random_secret_key(), encoding="utf-8")
        try:
            os.link(fresh, path)
        except FileExistsError:
            pass
        finally:
            fresh.unlink()
    return path.read_text(encoding="utf-8")


DEBUG = _boolean("LOFTBOOK_DEBUG", default=False)
SECRET_KEY = env.str("LOFTBOOK_SECRET_KEY", default="") or _kept_secret_key(VAR_DIR / "secret.key")
ALLOWED_HOSTS = env.list("LOFTBOOK_HOSTS", default=["localhost", "127.0.0.1", "[::1]"])
HTTPS = _boolean("LOFTBOOK_HTTPS", default=False)

INSTALLED_APPS = [
    "django.contrib.admin",
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "whitenoise.runserver_nostatic",
    "django.contrib.staticfiles",
    "csp",
    "django_htmx",
    "template_partials",
    "instruments",
    "services",
    "registrations",
]

MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "csp.middleware.CSPMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "config.middleware.WholeOrPartMiddleware",
    "django.contrib.auth.middleware.LoginRequiredMiddleware",
]

ROOT_URLCONF = "config.urls"
WSGI_APPLICATION = "config.wsgi.application"

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
                "config.access.whoever_asks",
            ],
        },
    },
]

SQLITE_OPTIONS = {
    "transaction_mode": "IMMEDIATE",
    "timeout": 5,
    "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;",
}
DATABASES = {"default": env.db("DATABASE_URL", default=f"sqlite:///{VAR_DIR / 'loftbook.sqlite3'}")}
if DATABASES["default"]["ENGINE"] == "django.db.backends.sqlite3":
    DATABASES["default"]["OPTIONS"] = SQLITE_OPTIONS
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

LOGIN_URL = "sign_in"
LOGIN_REDIRECT_URL = "front"
LOGOUT_REDIRECT_URL = "sign_in"
PASSWORD_RESET_TIMEOUT = 24 * 60 * 60
PASSWORD_HASHERS = [
    "django.contrib.auth.hashers.Argon2PasswordHasher",
    "django.contrib.auth.hashers.PBKDF2PasswordHasher",
]
AUTH_PASSWORD_VALIDATORS = [
    {"NAME": "django.contrib.auth.password_validation.UserAttributeSimilarityValidator"},
    {
        "NAME": "django.contrib.auth.password_validation.MinimumLengthValidator",
        "OPTIONS": {"min_length": 12},
    },
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
]

LANGUAGE_CODE = "en-gb"
TIME_ZONE = env.str("LOFTBOOK_TIME_ZONE", default="Europe/London")
USE_I18N = True
USE_TZ = True

STATIC_URL = "static/"
STATIC_ROOT = VAR_DIR / "static"
STATIC_ROOT.mkdir(exist_ok=True)
STATICFILES_DIRS = [BASE_DIR / "static"]
# Without a collected manifest (a fresh clone, the tests) files are served as they lie.
WHITENOISE_USE_FINDERS = not (STATIC_ROOT / "staticfiles.json").exists()
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {
        "BACKEND": (
            "django.contrib.staticfiles.storage.StaticFilesStorage"
            if WHITENOISE_USE_FINDERS
            else "whitenoise.storage.CompressedManifestStaticFilesStorage"
        )
    },
}

CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": [NONE],
        "script-src": [SELF],
        "style-src": [SELF],
        "img-src": [SELF],
        "font-src": [SELF],
        "connect-src": [SELF],
        "manifest-src": [SELF],
        "form-action": [SELF],
        "base-uri": [NONE],
        "frame-ancestors": [NONE],
        "object-src": [SELF],
    },
}
X_FRAME_OPTIONS = "DENY"
SECURE_REFERRER_POLICY = "same-origin"
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SECURE = CSRF_COOKIE_SECURE = SECURE_SSL_REDIRECT = HTTPS
SECURE_HSTS_SECONDS = 60 * 60 * 24 * 30 if HTTPS else 0
# What else is served under the church's domain is not ours to promise.
SILENCED_SYSTEM_CHECKS = ["security.W005", "security.W021"]
SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https") if HTTPS else None
CSRF_TRUSTED_ORIGINS = [f"https://{host}" for host in ALLOWED_HOSTS if HTTPS and host != "*"]
DATA_UPLOAD_MAX_MEMORY_SIZE = 2 * 1024 * 1024
# The page of places has three fields for each control of an organ.
DATA_UPLOAD_MAX_NUMBER_FIELDS = 5000
MESSAGE_STORAGE = "django.contrib.messages.storage.session.SessionStorage"

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"console": {"class": "logging.StreamHandler"}},
    "root": {"handlers": ["console"], "level": "WARNING"},
}
