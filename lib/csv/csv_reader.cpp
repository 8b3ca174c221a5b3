#include "csv_reader.h"
