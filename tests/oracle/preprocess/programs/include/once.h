#pragma once
once text
