/** What is measured and not tested: run by hand with the scripts in {@code bench/}. */
@NullMarked
package boundwright.bench;

import org.jspecify.annotations.NullMarked;

