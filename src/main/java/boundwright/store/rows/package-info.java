/** What all repositories read and write alike: columns that need more than a getter, and settings. It answers: what stands in this row? */
@NullMarked
package boundwright.store.rows;

import org.jspecify.annotations.NullMarked;
