"""Who may come in when the desk is open to a network: whoever knows its password.

The password is kept as an Argon2id hash (RFC 9106; argon2-cffi with its own defaults), in memory
alone and for as long as the desk runs. Whoever has given it holds a random token in a cookie that
scripts cannot read and that other sites' pages do not send.
"""

from __future__ import annotations

import secrets
import threading
import time
from http.cookies import SimpleCookie

from starlette.datastructures import Headers
from starlette.responses import RedirectResponse
from starlette.types import ASGIApp, Receive, Scope, Send

from itembank.desk.pages.enter import COOKIE
from itembank.errors import ItembankError

OPEN = ("/enter", "/static/", "/typefaces/")
SHORTEST = 10
"""Characters a password has at least: of a few ordinary words, or of letters and figures."""
LONGEST = 1000
"""Characters of a password that are looked at: what strangers send may be of any length."""
MOST_TRIES = 5
REST_SECONDS = 30.0
"""After so many wrong passwords nobody's is looked at for so long."""
MOST_TOKENS = 500
"""Visitors who are let in; of more, the first have to give the password again."""


class Password:
    """A password, known by its hash, and the tokens of those who gave it."""

    def __init__(self, password: str) -> None:
        from argon2 import PasswordHasher

        if len(password) < SHORTEST:
            raise ItembankError(
                f"A password for a network has at least {SHORTEST} characters: take three or four "
                "words that do not belong together."
            )
        self._hasher = PasswordHasher()
        self._hash = self._hasher.hash(password[:LONGEST])
        self._tokens: dict[str, None] = {}
        self._wrong = 0
        self._rests_until = 0.0
        self._lock = threading.Lock()

    def token_for(self, password: str) -> str:
        """Return a token for whoever gives the password.

        Raises:
            ItembankError: it is wrong, or too many wrong ones were given of late.
        """
        from argon2.exceptions import VerifyMismatchError

        # One at a time: many at once would each take the memory that makes guessing dear.
        with self._lock:
            now = time.monotonic()
            if now < self._rests_until:
                raise ItembankError("Too many wrong passwords. Wait half a minute.")
            try:
                self._hasher.verify(self._hash, password[:LONGEST])
            except VerifyMismatchError:
                self._wrong += 1
                if self._wrong >= MOST_TRIES:
                    self._wrong, self._rests_until = 0, now + REST_SECONDS
                raise ItembankError("That is not the password.") from None
            self._wrong = 0
            token = secrets.token_urlsafe(32)
            self._tokens[token] = None
            while len(self._tokens) > MOST_TOKENS:
                del self._tokens[next(iter(self._tokens))]
            return token

    def knows(self, token: str) -> bool:
        """Tell whether a token was given out."""
        return token in self._tokens


class Visitors:
    """Sends whoever has not given the password to the page that asks for it."""

    def __init__(self, app: ASGIApp, password: Password) -> None:
        self._app = app
        self._password = password

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or ask for the password first."""
        path = scope.get("path", "")
        let_in = scope["type"] != "http" or any(
            path == text or (text.endswith("/") and path.startswith(text)) for text in OPEN
        )
        if let_in or self._password.knows(_token(Headers(scope=scope))):
            await self._app(scope, receive, send)
            return
        await RedirectResponse("/enter", 303)(scope, receive, send)


def _token(headers: Headers) -> str:
    cookies: SimpleCookie = SimpleCookie()
    try:
        cookies.load(headers.get("cookie", ""))
    except Exception:  # a header can hold anything
        return ""
    return cookies[COOKIE].value if COOKIE in cookies else ""
