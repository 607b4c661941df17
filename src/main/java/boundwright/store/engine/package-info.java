/**
 * The databases that a store can be in: one SQLite file in the data folder, or a schema of a PostgreSQL that several machines share. It answers:
 * how is a write all or nothing and seen by the next one, whichever of them it is, and what is said when it fails?
 */
@NullMarked
package boundwright.store.engine;

import org.jspecify.annotations.NullMarked;
