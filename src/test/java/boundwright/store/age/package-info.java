/** Sealed files against the format's published vectors. */
@NullMarked
package boundwright.store.age;

import org.jspecify.annotations.NullMarked;
