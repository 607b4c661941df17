/**
 * Fuzz targets of what arrives from outside. In the tests each runs what was kept of earlier finds; {@code bench/fuzz} drives them by
 * coverage. A target holds when every input is taken or refused in words.
 */
@NullMarked
package boundwright.fuzz;

import org.jspecify.annotations.NullMarked;
