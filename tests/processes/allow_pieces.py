"""Loaded by a worker of these tests: lets it do what they ask, besides what the tool asks."""

from itembank.processes import parcel

parcel.OURS = (*parcel.OURS, "pieces")
