"""Somebody who visits an installation with a browser of their own, and the clock on its wall."""

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any

from flask.testing import FlaskClient
from web_cast import NOW, PASSWORD
from web_page import Page


class Clock:
    """A clock that tests set."""

    def __init__(self) -> None:
        self.now = NOW

    def __call__(self) -> datetime:
        """Return the instant that was set."""
        return self.now

    def wait(self, **time: float) -> None:
        """Let this much time pass: minutes=5, days=30."""
        self.now += timedelta(**time)


class Visitor:
    """A browser: it keeps cookies and sends forms as they stand, but for what is typed."""

    def __init__(self, client: FlaskClient) -> None:
        self.client = client

    def open(self, path: str, **asked: Any) -> Page:
        """Return the page at a path; a redirect is not followed."""
        return Page(self.client.get(path, **asked))

    def post(self, path: str, fields: Mapping[str, str], **asked: Any) -> Page:
        """Return what comes back for these fields, and nothing besides."""
        return Page(self.client.post(path, data=dict(fields), **asked))

    def send(self, page: Page, **typed: str) -> Page:
        """Return what comes back for the form of a page with this typed into it."""
        return self.post(page.form.action, {**page.form.fields, **typed})

    def go_on(self, page: Page) -> Page:
        """Return the page that a redirect leads to."""
        assert page.status == 303, page.words
        return self.open(page.leads_to)

    def answer(self, question: str | Page, *typed: str) -> Page:
        """Return the mark of what is typed into the fields of a question, in order.

        A question that is named is answered without any of its working shown.
        """
        page = self.alone(question) if isinstance(question, str) else question
        fields = {f"answer_{number}": text for number, text in enumerate(typed)}
        return self.go_on(self.send(page, **fields))

    def alone(self, question: str) -> Page:
        """Return the page of a question, or of its path, with none of its working shown."""
        path = question if question.startswith("/") else f"/questions/{question}"
        return self.open(f"{path}?alone=yes")

    def read(self, lesson: str) -> Page:
        """Say that a lesson was read."""
        return self.send(self.open(f"/lessons/{lesson}"))

    def knock(self, name: str, password: str = PASSWORD, **fields: str) -> Page:
        """Return what comes back for a name and a password."""
        return self.send(self.open("/sign-in"), name=name, password=password, **fields)

    def sign_out(self) -> Page:
        """Press the button in the header."""
        form = self.open("/help").sign_out_form
        return self.post(form.action, form.fields)
