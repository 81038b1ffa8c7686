"""What stands between a request and the pages: who may ask, for what, and how much.

The desk listens on this computer alone, but so does every web page that this computer shows: a
page from elsewhere may send forms here, or have its own name lead here. So the name that was
called must be one of ours (against DNS rebinding), and whatever changes anything must come from
a page of ours: browsers say where a request comes from in ``Origin`` and ``Sec-Fetch-Site``
(WHATWG Fetch; W3C Fetch Metadata), which no page can forge.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from ipaddress import ip_address
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

SAFE = frozenset({"GET", "HEAD"})
MOST_BYTES = 2_000_000
"""The longest form or file that is read: a bank of 5,000 questions as a table is half of it."""
POLICY = "; ".join(
    [
        "default-src 'none'",
        "style-src 'self'",
        "script-src 'self'",
        "img-src 'self' data:",
        "font-src 'self'",
        "connect-src 'self'",
        "form-action 'self'",
        "frame-ancestors 'none'",
        "base-uri 'none'",
    ]
)
"""The content-security policy (W3C CSP Level 3) of every page: nothing from anywhere else."""
HEADERS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
}


class Guards:
    """Lets through what comes from a page of ours, and says plainly why it refuses the rest."""

    def __init__(
        self,
        app: ASGIApp,
        hosts: Collection[str],
        after_first: Callable[[], object],
        port_on_network: int | None = None,
    ) -> None:
        self._app = app
        self._port = port_on_network
        self._hosts = frozenset(hosts)
        self._after_first: Callable[[], object] | None = after_first

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request, or refuse it."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        refused = self._refused(scope["method"], headers)
        if refused is not None:
            status, why = refused
            await PlainTextResponse(why, status, headers=HEADERS)(scope, receive, send)
            return
        await self._app(scope, _counted(receive), _with_headers(send))
        if self._after_first is not None:
            # Cleared before it runs: another request may be answered meanwhile.
            once, self._after_first = self._after_first, None
            once()

    def _refused(self, method: str, headers: Headers) -> tuple[int, str] | None:
        """Return the status and the sentence with which a request is refused, if it is."""
        host = headers.get("host", "")
        if host.lower() not in self._hosts and not self._is_address(host):
            return 421, "This desk answers to its own address only. Open the one it printed."
        if method not in SAFE | {"POST"}:
            return 405, "The desk reads pages and takes forms, nothing else."
        if method in SAFE:
            return None
        origin, site = headers.get("origin"), headers.get("sec-fetch-site")
        ours = site == "same-origin" if origin is None else _host_of(origin) == host.lower()
        if not ours or site not in (None, "same-origin"):
            return 403, "This form was not sent from a page of the desk, so nothing was done."
        length = headers.get("content-length", "")
        if length and (not length.isascii() or not length.isdigit()):
            return 400, "The length of what was sent makes no sense."
        # By its figures first: Python refuses to read a number of thousands of them.
        if length and (len(length) > 12 or int(length) > MOST_BYTES):
            return 413, TOO_LONG
        return None

    def _is_address(self, host: str) -> bool:
        """Tell whether a host is a bare address at our port, where a network may come in.

        A page from elsewhere can have its own name lead here, but no address: that it can only
        call from a page of its own origin, which the check of forms and the cookie keep out.
        """
        if self._port is None:
            return False
        name, _, port = host.rpartition(":")
        try:
            ip_address(name.removeprefix("[").removesuffix("]"))
        except ValueError:
            return False
        return port == str(self._port)


def _host_of(origin: str) -> str | None:
    """Return the host that a form says it comes from; None where that is no address at all."""
    try:
        return urlsplit(origin).netloc.lower()
    except ValueError:
        return None


TOO_LONG = f"That is too long: the desk reads up to {MOST_BYTES // 1_000_000} MB at once."


class TooLong(Exception):
    """More was sent than is read at once, with no word of its length before."""


def _counted(receive: Receive) -> Receive:
    """Return a way to read a request that stops where more comes than is read at once."""
    read = 0

    async def counting() -> Message:
        nonlocal read
        message = await receive()
        # Counted as it comes, since a sender need not say beforehand how much there is.
        read += len(message.get("body", b""))
        if read > MOST_BYTES:
            raise TooLong
        return message

    return counting


def _with_headers(send: Send) -> Send:
    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in HEADERS.items():
                headers.setdefault(name, value)
        await send(message)

    return sending
