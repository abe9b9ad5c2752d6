-- A chamber that records still need is retired, not removed. Its name may be used again, and `name` is unique: a retired chamber keeps its id there
-- and what people called it in `retired_name` (making the table anew would take the placements of its probes with it).
ALTER TABLE chambers ADD COLUMN retired_ms INTEGER;
ALTER TABLE chambers ADD COLUMN retired_name TEXT;
