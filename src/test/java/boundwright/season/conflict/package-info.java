@NullMarked
package boundwright.season.conflict;

import org.jspecify.annotations.NullMarked;
