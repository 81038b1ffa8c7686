"""The real desk at a free port of this computer, for tests that look at it in a browser."""

import contextlib
import threading
import time

import uvicorn

from itembank.desk.replying.desk import Desk
from itembank.desk.serving.application import Network, application
from itembank.desk.serving.start import LOOPBACK, listening
from itembank.desk.serving.visitors import Password


@contextlib.contextmanager
def served(home, wrap=lambda app: app, password=None):
    """Serve the desk of a department for as long as the block runs; give its address.

    `wrap` may put something between the desk and the network, such as slowness. With a password
    the desk asks for it, as where it is open to a network.
    """
    with contextlib.closing(listening(0)) as at:
        port = at.getsockname()[1]
        network = Network(port, Password(password)) if password else None
        app = wrap(application(Desk(home, home), {f"{LOOPBACK}:{port}"}, network=network))
        server = uvicorn.Server(
            uvicorn.Config(
                app, http="h11", loop="asyncio", ws="none", lifespan="off", log_level="error"
            )
        )
        # Only the main thread may be told of signals.
        server.capture_signals = contextlib.nullcontext
        thread = threading.Thread(target=server.run, kwargs={"sockets": [at]}, daemon=True)
        thread.start()
        try:
            while not server.started:
                assert thread.is_alive(), "The desk did not start."
                time.sleep(0.005)
            yield f"http://{LOOPBACK}:{port}"
        finally:
            server.should_exit = True
            thread.join(timeout=20)
            assert not thread.is_alive(), "The desk did not stop."
