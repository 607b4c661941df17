/** When life happens: the smallest change that puts a published plan right again, shown before it is accepted. */
@NullMarked
package boundwright.season.mend;

import org.jspecify.annotations.NullMarked;
