"""The pages: the only room that knows a request."""

from datetime import timedelta
from typing import Any

from flask import Flask
from werkzeug.middleware.proxy_fix import ProxyFix

from trainer.config import Config
from trainer.records import db, schema, skill_recount, texts, writing
from trainer.web import (
    access,
    confirming,
    crew,
    cups,
    faults,
    filters,
    forms,
    fragments,
    guidance,
    headers,
    lessons,
    mix,
    navigation,
    practice,
    practise,
    progress,
    questions,
    roof_figures,
    roof_sheet,
    roofs,
    season,
    season_crew,
    signing_in,
    static_files,
    today,
    uses,
)
from trainer.web.installation import Installation, utc_now

__all__ = ["Installation", "init_app", "prepare", "settings", "utc_now"]


def settings(config: Config, secret: str) -> dict[str, Any]:
    """Return Flask's settings from ours."""
    return {
        "SECRET_KEY": secret,
        "SQLALCHEMY_DATABASE_URI": config.database_url,
        "SESSION_COOKIE_NAME": config.cookie_name("form"),
        "SESSION_COOKIE_SECURE": config.https,
        "SESSION_COOKIE_SAMESITE": "Lax",
        # It lasts from signing in; sending it with every page would sign it every time.
        "SESSION_REFRESH_EACH_REQUEST": False,
        "PERMANENT_SESSION_LIFETIME": timedelta(days=30),
        # The token lives as long as the session: a form that lay open over lunch is still good.
        "WTF_CSRF_TIME_LIMIT": None,
        # The guard calls it by itself, after it has looked who is there.
        "WTF_CSRF_CHECK_DEFAULT": False,
        # The forms here are small; ten thousand characters in a field are refused by sentence.
        "MAX_CONTENT_LENGTH": 256 * 1024,
        "MAX_FORM_MEMORY_SIZE": 256 * 1024,
        "COMPRESS_BR_LEVEL": 4,
        "COMPRESS_MIMETYPES": ["text/html", "text/css", "text/javascript", "image/svg+xml"],
    }


def init_app(app: Flask, installation: Installation) -> None:
    """Give the application its pages, its guard, and what stands round every page."""
    installation.install(app)
    forms.csrf.init_app(app)
    access.init_app(app)
    for room in (
        *(signing_in, today, lessons, practice, season, questions, progress, uses),
        *(crew, confirming, season_crew, guidance, roofs, roof_sheet, practise, mix, cups),
    ):
        app.register_blueprint(room.bp)
    faults.init_app(app)
    filters.init_app(app)
    fragments.init_app(app)
    roof_figures.init_app(app, installation)
    headers.init_app(app)
    navigation.init_app(app)
    static_files.init_app(app)
    if installation.config.https:
        # TLS ends at a proxy: it alone knows who asks, and how.
        app.wsgi_app = ProxyFix(app.wsgi_app)  # type: ignore[method-assign]


def prepare(app: Flask) -> None:
    """Bring the database up to date and keep the text of every lesson that can be asked.

    After an upgrade the skills are counted again: how they are kept may have changed.
    """
    upgraded = schema.upgrade(app)
    installation: Installation = app.extensions["installation"]
    with app.app_context():
        writing(db.session)
        served = [
            texts.Text("lesson", each.file, each.text, each.digest)
            for each in installation.library.written
        ]
        texts.keep(db.session, served, installation.now())
        if upgraded:
            skill_recount.rebuild_skills(db.session, installation.thresholds.skills)
        db.session.commit()
