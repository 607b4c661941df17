@NullMarked
package boundwright.store.season;

import org.jspecify.annotations.NullMarked;
