#include "csv_writer.h"
