"""How charts are measured; the axis is that of ``bar_chart_measured``."""
