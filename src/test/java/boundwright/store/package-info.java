/** Checks of the store on the real engine and real files. */
@NullMarked
package boundwright.store;

import org.jspecify.annotations.NullMarked;

