"""The floors: bare Flask, one read by key and a page; bare Flask and one durable insert."""

import os
from pathlib import Path

from flask import Flask, redirect, request
from flask.typing import ResponseReturnValue
from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import text

from trainer.records.database import prepare


def create_app() -> Flask:
    """Return an application with nothing in it but what cannot be left out."""
    app = Flask(__name__)
    file = Path(os.environ["TRAINER_INSTANCE"]) / "floor.sqlite"
    app.config["SQLALCHEMY_DATABASE_URI"] = f"sqlite:///{file}"
    db = SQLAlchemy(app)
    page = "x" * int(os.environ["FLOOR_BYTES"])
    with app.app_context():
        prepare(db.engine)
        db.session.execute(text("CREATE TABLE note (id INTEGER PRIMARY KEY, words TEXT)"))
        db.session.execute(text("INSERT INTO note (words) VALUES ('resin')"))
        db.session.commit()

    @app.get("/page/<int:key>")
    def read(key: int) -> str:
        db.session.execute(text("SELECT words FROM note WHERE id = :key"), {"key": key}).one()
        return page

    @app.post("/insert")
    def insert() -> ResponseReturnValue:
        words = request.form["words"]
        db.session.execute(text("INSERT INTO note (words) VALUES (:words)"), {"words": words})
        db.session.commit()
        return redirect("/page/1", 303)

    return app
