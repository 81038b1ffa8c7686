"""What holds for every test: none fails because the machine is slow, or by the day's luck.

The README's test command draws the same random cases on every run, so that a commit passes or
fails for what it changed. `make explore` draws new ones: run it to look for what nobody met yet.
"""

from hypothesis import HealthCheck, settings

always = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow], print_blob=True)
settings.register_profile("same", always, derandomize=True)
settings.register_profile("new", always, derandomize=False)
settings.load_profile("same")
