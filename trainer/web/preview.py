"""One lesson as a trainee sees it, while its author is still writing it.

Nobody signs in, and nothing lasts: with each change of a file the lesson is read anew, into an
application and a database of its own.
"""

import re
import threading
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING

from flask import Flask, flash, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.exceptions import NotFound

from trainer import create_app
from trainer.config import Config
from trainer.lessons import AuthorError, ContentError, Lesson, check_lesson, read_library
from trainer.records import db, people, signins, writing
from trainer.web import fragments, prepare
from trainer.web.installation import Installation, here
from trainer.web.signing_in import COOKIE

if TYPE_CHECKING:
    from _typeshed.wsgi import StartResponse, WSGIApplication, WSGIEnvironment

#: Whom the pages call the one who looks at them.
NAME = "Preview"
ALONE = "This shows one lesson by itself: the others aren't here."
ANEW = "The lesson was read anew since then. Here is the question as it is now."
_TO_THE_LESSON = ("/", "/sign-in", "/sign-out")
_LOST = re.compile(r"/(?:lessons|questions)/([^/]+)")
_OWN_COOKIE = "preview"

Stamp = tuple[tuple[str, int, int], ...]


@dataclass
class Preview:
    """The pages of one lesson, made again whenever a file of the content has changed."""

    config: Config
    #: The name of the lesson's file, in the folder of lessons.
    file: str
    _stamp: Stamp | None = None
    _pages: "WSGIApplication | None" = None
    _made: int = 0
    #: What was made last, whose database is open.
    _app: Flask | None = None
    _making: threading.Lock = field(default_factory=threading.Lock)

    def __call__(self, environ: "WSGIEnvironment", start: "StartResponse") -> Iterable[bytes]:
        """Answer a request by what stands in the files now."""
        return self.pages()(environ, start)

    def pages(self) -> "WSGIApplication":
        """Return the pages, or one page with all that is to mend where they can't be made."""
        with self._making:
            stamp = stamp_of(self.config.content)
            if self._pages is None or stamp != self._stamp:
                self._pages, self._stamp = self._make(), stamp
            return self._pages

    def _make(self) -> "WSGIApplication":
        try:
            library = read_library(self.config.content, self.file)
        except ContentError as error:
            return to_mend(error.mistakes).wsgi_app
        self._put_away()
        self._made += 1
        database = self.config.instance / f"preview-{self._made}.sqlite"
        app = create_app(replace(self.config, database_url=f"sqlite:///{database}"), None, library)
        self._app = app
        # Beside a server on this machine, whose cookies a browser would mix up with these.
        app.config["SESSION_COOKIE_NAME"] = _OWN_COOKIE
        prepare(app)
        show_alone(app, library.first, check_lesson(library, library.first))
        return signed_in_always(app, enrol(app))

    def _put_away(self) -> None:
        """Close and remove the last database: an author saves some hundred times a day."""
        if self._app is not None:
            with self._app.app_context():
                db.engine.dispose()
        for old in self.config.instance.glob(f"preview-{self._made}.sqlite*"):
            old.unlink()


def stamp_of(folder: Path) -> Stamp:
    """Return what changes as soon as any file below a folder does."""
    files = ((file, file.stat()) for file in sorted(folder.rglob("*")) if file.is_file())
    return tuple((str(file), stat.st_mtime_ns, stat.st_size) for file, stat in files)


def enrol(app: Flask) -> str:
    """Return the token of the one who looks; nobody else can sign in."""
    installation: Installation = app.extensions["installation"]
    now = installation.now()
    with app.app_context():
        writing(db.session)
        added = people.add_person(
            db.session,
            name=NAME,
            sign_in_name=NAME,
            password=installation.secret,
            roles=("trainee",),
            now=now,
        )
        token = signins.start(db.session, added.person_id, now)
        db.session.commit()
    return token


def signed_in_always(app: Flask, token: str) -> "WSGIApplication":
    """Return the application as it is for somebody who holds this token, whoever asks."""
    installation: Installation = app.extensions["installation"]
    name = installation.config.cookie_name(COOKIE)

    def pages(environ: "WSGIEnvironment", start: "StartResponse") -> Iterable[bytes]:
        sent = environ.get("HTTP_COOKIE", "").split("; ")
        kept = [cookie for cookie in sent if cookie and not cookie.startswith(f"{name}=")]
        return app({**environ, "HTTP_COOKIE": "; ".join([*kept, f"{name}={token}"])}, start)

    return pages


def show_alone(app: Flask, lesson: Lesson, mistakes: Sequence[AuthorError]) -> None:
    """Have every way lead back to the one lesson, on which stands what is still to mend."""

    def still() -> dict[str, Sequence[AuthorError]]:
        return {"to_mend": mistakes}

    def first() -> ResponseReturnValue | None:
        if request.path in _TO_THE_LESSON:
            return redirect(url_for("lessons.show", slug=lesson.slug), 303)
        return None

    def lost(error: NotFound) -> ResponseReturnValue:
        named = _LOST.match(request.path)
        if named is None:
            return error
        if named[1] in here().library.questions:
            flash(ANEW)
            return redirect(url_for("questions.show", question_id=named[1]), 303)
        flash(ALONE)
        return redirect(url_for("lessons.show", slug=lesson.slug), 303)

    before: list[Callable[[], ResponseReturnValue | None]] = [first]
    app.context_processor(still)
    app.before_request_funcs[None] = [*before, *app.before_request_funcs[None]]
    app.register_error_handler(404, lost)


def to_mend(mistakes: Sequence[AuthorError]) -> Flask:
    """Return an application with one page, which tells mistakes as `trainer check` does.

    It asks for itself again and again, so that the lesson comes back once they are mended.
    """
    app = Flask("trainer.web")
    fragments.init_app(app)

    def page(**_path: str) -> ResponseReturnValue:
        return render_template("preview/to_mend.html", to_mend=mistakes), 503

    for rule in ("/", "/<path:path>"):
        app.add_url_rule(rule, view_func=page, methods=["GET", "POST"])
    return app
