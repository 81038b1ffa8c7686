"""What holds for every test: none fails because the machine is slow."""

from hypothesis import HealthCheck, settings

settings.register_profile(
    "untimed", deadline=None, suppress_health_check=[HealthCheck.too_slow], print_blob=True
)
settings.load_profile("untimed")
