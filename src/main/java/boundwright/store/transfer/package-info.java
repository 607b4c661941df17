/** An athlete goes from one club's store to another's. */
@NullMarked
package boundwright.store.transfer;

import org.jspecify.annotations.NullMarked;
