"""The documents of a pack and the reports, one file a document."""
