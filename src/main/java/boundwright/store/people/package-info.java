/** Birth dates and answers in the database. */
@NullMarked
package boundwright.store.people;

import org.jspecify.annotations.NullMarked;
