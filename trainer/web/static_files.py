"""Files that are the same for everybody, sent as small as they get, and kept for a while."""

from flask import Flask, request
from flask_compress import Compress
from werkzeug.wrappers import Response
from whitenoise import WhiteNoise

from trainer.web import headers

#: Seconds for which a browser keeps a file without asking.
KEPT = 600


def init_app(app: Flask) -> None:
    """Serve them, and compress them and every page.

    Typefaces are as small as they get, so they go out before the application is asked.
    """
    app.config["SEND_FILE_MAX_AGE_DEFAULT"] = KEPT
    Compress(app)
    # What is registered last comes first: the compressor is given a file that was read and shut.
    app.after_request(_read_whole)
    app.wsgi_app = WhiteNoise(  # type: ignore[method-assign]
        app.wsgi_app,
        root=f"{app.static_folder}/fonts",
        prefix="static/fonts/",
        max_age=KEPT,
        add_headers_function=headers.put_on_file,
        allow_all_origins=False,
    )


def _read_whole(response: Response) -> Response:
    if request.endpoint == "static" and response.is_streamed:
        response.direct_passthrough = False
        response.make_sequence()
    return response
