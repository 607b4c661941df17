/** Birth dates and answers on the real database. */
@NullMarked
package boundwright.store.transfer;

import org.jspecify.annotations.NullMarked;
