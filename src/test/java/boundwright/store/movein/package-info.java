/** A coach's own spreadsheets on the real database. */
@NullMarked
package boundwright.store.movein;

import org.jspecify.annotations.NullMarked;
