/** Birth dates and answers on the real database. */
@NullMarked
package boundwright.store.people;

import org.jspecify.annotations.NullMarked;
