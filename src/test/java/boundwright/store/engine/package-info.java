/** The files beneath the store. */
@NullMarked
package boundwright.store.engine;

import org.jspecify.annotations.NullMarked;
