/**
 * The jar as a module, for the application folder: what lies in the runtime itself is found wherever the folder is moved,
 * and so is the archive of its classes. All of it is open, since documents and options are read by reflection. What it
 * requires is what {@code jdeps --print-module-deps} says.
 */
open module io.burnlaw {
    requires java.compiler;
    requires java.desktop;
    requires java.sql;
    requires jdk.unsupported;

    uses org.slf4j.spi.SLF4JServiceProvider;

    provides org.slf4j.spi.SLF4JServiceProvider with
            org.slf4j.nop.NOPServiceProvider;
}
