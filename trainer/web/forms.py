"""Forms: thin over the engine's reader, keeping whatever was typed."""

from flask_wtf.csrf import CSRFProtect
from wtforms import Form, PasswordField, StringField, validators

csrf = CSRFProtect()


class SignInForm(Form):
    """A name and a password."""

    name = StringField("Your sign-in name", [validators.InputRequired("Type your sign-in name.")])
    password = PasswordField("Password", [validators.InputRequired("Type your password.")])
