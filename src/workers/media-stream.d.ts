// The ports of src/session name it; in a worker nobody has one.
declare type MediaStream = never;
