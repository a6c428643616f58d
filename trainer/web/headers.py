"""Headers on every answer: what a browser may load, show and tell others."""

from wsgiref.headers import Headers

from flask import Flask, request
from werkzeug.wrappers import Response

from trainer.web.installation import here

_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
#: Has a browser drop what pages keep on the phone: nobody after sees the last person's.
FORGET = {"Clear-Site-Data": '"storage"'}
#: The file that keeps a page without signal, and the one page with all below it that it may.
_WORKER, _KEPT_PAGE = "mix-worker.js", "/mix"
_ALWAYS = {
    "Content-Security-Policy": _POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
}


def init_app(app: Flask) -> None:
    """Put them on every answer."""
    app.after_request(_put_on)


def put_on_file(headers: Headers, _path: str, _url: str) -> None:
    """Put on a typeface's answer what keeps a browser from guessing at its kind."""
    headers["X-Content-Type-Options"] = _ALWAYS["X-Content-Type-Options"]
    headers["Content-Security-Policy"] = _POLICY


def _put_on(response: Response) -> Response:
    response.headers.extend(_ALWAYS)
    if request.endpoint != "static":
        # A shared phone's back button must not show the last person's pages.
        response.headers.setdefault("Cache-Control", "private, no-store")
    elif request.path.endswith(_WORKER):
        response.headers["Service-Worker-Allowed"] = _KEPT_PAGE
    if here().config.https:
        response.headers["Strict-Transport-Security"] = "max-age=31536000"
    return response
